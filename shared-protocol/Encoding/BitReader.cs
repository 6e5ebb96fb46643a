using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>
    /// Bits from the bytes of a record's body, the highest of each byte first. Past the end they are zeros, and the source says so. Reads some bytes
    /// ahead, and gives back those that nobody wanted: <see cref="End"/> after the last bit, before anyone else reads the source.
    /// </summary>
    public sealed class BitReader
    {
        /// <summary>Bits that <see cref="Read"/> gives at most.</summary>
        public const int MaxBits = 24;

        private const int WindowBits = 32;

        private static readonly byte[] LeadingOnes = CountLeadingOnes();

        private ByteReader? source;

        // The next bits from the highest on; those that came after the source's end are the last of them.
        private uint window;
        private int left;
        private int beyond;

        public void Begin(ByteReader bytes)
        {
            source = bytes;
            window = 0;
            left = 0;
            beyond = 0;
        }

        public int Read(int bits)
        {
            if (bits == 0)
            {
                return 0;
            }

            if (left < bits)
            {
                Fill();
            }

            int value = (int)(window >> (WindowBits - bits));
            Take(bits);
            return value;
        }

        /// <summary>Ones up to the first zero, which is passed over; at most <paramref name="limit"/>, after which no zero stands.</summary>
        public int ReadOnes(int limit)
        {
            int ones = 0;
            while (true)
            {
                if (left < 8)
                {
                    Fill();
                }

                int more = LeadingOnes[window >> (WindowBits - 8)];
                if (ones + more >= limit)
                {
                    Take(limit - ones);
                    return limit;
                }

                ones += more;
                if (more < 8)
                {
                    Take(more + 1);
                    return ones;
                }

                Take(8);
            }
        }

        /// <summary>Gives back whole bytes that were not begun; the rest of one that was is passed over.</summary>
        public void End()
        {
            source!.Position -= (left - beyond) / 8;
            left = 0;
            beyond = 0;
        }

        private void Fill()
        {
            while (left <= WindowBits - 8)
            {
                if (source!.Remaining > 0)
                {
                    window |= (uint)source.ReadByte() << (WindowBits - 8 - left);
                }
                else
                {
                    beyond += 8;
                }

                left += 8;
            }
        }

        private void Take(int bits)
        {
            window <<= bits;
            left -= bits;
            if (left < beyond)
            {
                beyond = left;
                source!.TooShort = true;
            }
        }

        private static byte[] CountLeadingOnes()
        {
            byte[] counts = new byte[256];
            for (int value = 0; value < counts.Length; value++)
            {
                for (int bit = 0x80; (value & bit) != 0; bit >>= 1)
                {
                    counts[value]++;
                }
            }

            return counts;
        }
    }
}
