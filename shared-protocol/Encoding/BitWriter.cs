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
        private uint pending;
        private int pendingBits;

        public BitWriter(int capacity)
        {
            whole = new byte[capacity];
        }

        /// <summary>Bytes, one that has begun among them.</summary>
        public int Length => pendingBits > 0 ? wholeLength + 1 : wholeLength;

        public void Begin()
        {
            wholeLength = 0;
            pending = 0;
            pendingBits = 0;
        }

        public void Write(int value, int bits)
        {
            uint joined = (pending << bits) | (uint)value;
            int left = pendingBits + bits;
            while (left >= 8)
            {
                left -= 8;
                whole[wholeLength++] = (byte)(joined >> left);
            }

            pending = joined;
            pendingBits = left;
        }

        /// <summary>The last byte is filled with zeros; bits may still follow here.</summary>
        public void CopyTo(ByteWriter writer)
        {
            writer.WriteBytes(whole, 0, wholeLength);
            if (pendingBits > 0)
            {
                writer.WriteByte((byte)(pending << (8 - pendingBits)));
            }
        }
    }
}
