using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>Bits into bytes, the first bit into the highest. Its caller has counted them: what is written fits.</summary>
    public sealed class BitWriter
    {
        /// <summary>Bits that one Write takes at most.</summary>
        public const int MaxBits = 24;

        /// <summary>What was put away, and how much of it.</summary>
        internal readonly byte[] Whole;
        internal int WholeLength;

        /// <summary>Bits that are in no byte yet.</summary>
        internal uint Pending;
        internal int PendingBits;

        public BitWriter(int capacity)
        {
            Whole = new byte[capacity];
        }

        /// <summary>Bytes, one that has begun among them.</summary>
        public int Length => PendingBits > 0 ? WholeLength + 1 : WholeLength;

        public void Begin()
        {
            WholeLength = 0;
            Pending = 0;
            PendingBits = 0;
        }

        public void Write(int value, int bits) => Put((Pending << bits) | (uint)value, PendingBits + bits);

        // With those that wait first among them.
        private void Put(uint joined, int left)
        {
            byte[] bytes = Whole;
            int at = WholeLength;
            while (left >= 8)
            {
                left -= 8;
                bytes[at++] = (byte)(joined >> left);
            }

            WholeLength = at;
            Pending = joined;
            PendingBits = left;
        }

        /// <summary>The last byte is filled with zeros; bits may still follow here.</summary>
        public void CopyTo(ByteWriter writer)
        {
            writer.WriteBytes(Whole, 0, WholeLength);
            if (PendingBits > 0)
            {
                writer.WriteByte((byte)(Pending << (8 - PendingBits)));
            }
        }
    }
}
