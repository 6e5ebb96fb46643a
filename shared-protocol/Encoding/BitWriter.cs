namespace LoggerBox.Protocol.Encoding
{
    /// <summary>Bits into bytes, the first bit into the highest. Its caller has counted them: what is written fits.</summary>
    public sealed class BitWriter
    {
        /// <summary>Bits that one Write takes at most.</summary>
        public const int MaxBits = 24;

        public readonly byte[] Bytes;
        public int Length;

        private uint pending;
        private int pendingBits;

        public BitWriter(int capacity)
        {
            Bytes = new byte[capacity];
        }

        public void Begin()
        {
            Length = 0;
            pending = 0;
            pendingBits = 0;
        }

        public void Write(int value, int bits)
        {
            pending = (pending << bits) | (uint)value;
            pendingBits += bits;
            while (pendingBits >= 8)
            {
                pendingBits -= 8;
                Bytes[Length++] = (byte)(pending >> pendingBits);
            }
        }

        /// <summary>Fills the last byte with zeros.</summary>
        public void End()
        {
            if (pendingBits > 0)
            {
                Write(0, 8 - pendingBits);
            }
        }
    }
}
