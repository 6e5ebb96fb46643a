using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>Bits into bytes, the first bit into the highest. Its caller has counted them: what is written fits.</summary>
    public sealed class BitWriter
    {
        /// <summary>Bits that one Write takes at most.</summary>
        public const int MaxBits = 24;

        private readonly byte[] whole;
        private int wholeLength;

        /// <summary>Bits that are in no byte yet.</summary>
        internal uint Pending;
        internal int PendingBits;

        /// <summary>So many can wait there.</summary>
        internal const int MostPending = 31;

        public BitWriter(int capacity)
        {
            whole = new byte[capacity];
        }

        /// <summary>Bytes, one that has begun among them.</summary>
        public int Length => PendingBits > 0 ? wholeLength + 1 : wholeLength;

        public void Begin()
        {
            wholeLength = 0;
            Pending = 0;
            PendingBits = 0;
        }

        public void Write(int value, int bits) => Put((Pending << bits) | (uint)value, PendingBits + bits);

        /// <summary>Puts bits away, with those that wait first among them.</summary>
        internal void Put(uint joined, int left)
        {
            byte[] bytes = whole;
            int at = wholeLength;
            while (left >= 8)
            {
                left -= 8;
                bytes[at++] = (byte)(joined >> left);
            }

            wholeLength = at;
            Pending = joined;
            PendingBits = left;
        }

        /// <summary>The last byte is filled with zeros; bits may still follow here.</summary>
        public void CopyTo(ByteWriter writer)
        {
            writer.WriteBytes(whole, 0, wholeLength);
            if (PendingBits > 0)
            {
                writer.WriteByte((byte)(Pending << (8 - PendingBits)));
            }
        }
    }
}
