using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>
    /// Bits from the bytes of a record's body, the highest of each byte first. Past the end they are zeros, and the source says so. Reads some bytes
    /// ahead, and gives back those that nobody wanted: <see cref="End"/> after the last bit, before anyone else reads the source. What reads many values
    /// at a time takes the bits from the window itself.
    /// </summary>
    public sealed class BitReader
    {
        /// <summary>Bits that <see cref="Read"/> gives at most.</summary>
        public const int MaxBits = 24;

        internal const int WindowBits = 64;

        /// <summary>By a byte: its ones before the first zero, from the highest bit on.</summary>
        internal static readonly byte[] LeadingOnes = CountLeadingOnes();

        /// <summary>The next bits from the highest on; those that came after the source's end are the last of them.</summary>
        internal ulong Window;

        /// <summary>Bits in the window.</summary>
        internal int Left;

        private ByteReader? source;
        private int beyond;

        internal ByteReader Source => source!;

        /// <summary>The window holds zeros that are none of the source's.</summary>
        internal bool HasEnded => beyond > 0;

        public void Begin(ByteReader bytes)
        {
            source = bytes;
            Window = 0;
            Left = 0;
            beyond = 0;
        }

        public int Read(int bits)
        {
            if (bits == 0)
            {
                return 0;
            }

            if (Left < bits)
            {
                Fill();
            }

            int value = (int)(Window >> (WindowBits - bits));
            Take(bits);
            return value;
        }

        /// <summary>Ones up to the first zero, which is passed over; at most <paramref name="limit"/>, after which no zero stands.</summary>
        public int ReadOnes(int limit)
        {
            int ones = 0;
            while (true)
            {
                if (Left < 8)
                {
                    Fill();
                }

                int more = LeadingOnes[(int)(Window >> (WindowBits - 8))];
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
            source!.Position -= (Left - beyond) / 8;
            Left = 0;
            beyond = 0;
        }

        private void Fill()
        {
            while (Left <= WindowBits - 8)
            {
                if (source!.Remaining > 0)
                {
                    Window |= (ulong)source.ReadByte() << (WindowBits - 8 - Left);
                }
                else
                {
                    beyond += 8;
                }

                Left += 8;
            }
        }

        private void Take(int bits)
        {
            Window <<= bits;
            Left -= bits;
            if (Left < beyond)
            {
                beyond = Left;
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
