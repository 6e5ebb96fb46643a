using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>Bits from the bytes of a record's body, the highest of each byte first. Past the end they are zeros, and the source says so.</summary>
    public sealed class BitReader
    {
        private ByteReader? source;
        private int current;
        private int left;

        public void Begin(ByteReader bytes)
        {
            source = bytes;
            left = 0;
        }

        public int Read(int bits)
        {
            int value = 0;
            for (int missing = bits; missing > 0;)
            {
                Refill();
                int taken = missing < left ? missing : left;
                left -= taken;
                missing -= taken;
                value = (value << taken) | ((current >> left) & ((1 << taken) - 1));
            }

            return value;
        }

        /// <summary>Ones up to the first zero, which is passed over; at most <paramref name="limit"/>, after which no zero stands.</summary>
        public int ReadOnes(int limit)
        {
            int ones = 0;
            while (ones < limit && Read(1) == 1)
            {
                ones++;
            }

            return ones;
        }

        private void Refill()
        {
            if (left == 0)
            {
                current = source!.ReadByte();
                left = 8;
            }
        }
    }
}
