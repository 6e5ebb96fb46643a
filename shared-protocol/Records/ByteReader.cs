namespace LoggerBox.Protocol.Records
{
    /// <summary>Little-endian fields from a caller's buffer. Reading past the end gives zero and sets a flag: nothing is thrown.</summary>
    public sealed class ByteReader
    {
        public int Position;
        public bool TooShort;

        private readonly byte[] buffer;
        private int end;

        public ByteReader(byte[] buffer)
        {
            this.buffer = buffer;
            end = buffer.Length;
        }

        public int Remaining => end - Position;

        public void Restart(int offset, int count)
        {
            Position = offset;
            end = offset + count;
            TooShort = false;
        }

        public byte ReadByte() => Has(1) ? buffer[Position++] : (byte)0;

        public bool ReadBoolean() => ReadByte() != 0;

        public ushort ReadUInt16()
        {
            if (!Has(2))
            {
                return 0;
            }

            int value = buffer[Position] | (buffer[Position + 1] << 8);
            Position += 2;
            return (ushort)value;
        }

        public short ReadInt16() => (short)ReadUInt16();

        public uint ReadUInt32()
        {
            if (!Has(4))
            {
                return 0;
            }

            uint value = buffer[Position] | ((uint)buffer[Position + 1] << 8)
                | ((uint)buffer[Position + 2] << 16) | ((uint)buffer[Position + 3] << 24);
            Position += 4;
            return value;
        }

        public int ReadInt32() => (int)ReadUInt32();

        public long ReadInt64()
        {
            if (!Has(8))
            {
                return 0;
            }

            uint low = ReadUInt32();
            return ((long)ReadUInt32() << 32) | low;
        }

        public void ReadBytes(byte[] target, int offset, int count)
        {
            if (Has(count))
            {
                System.Array.Copy(buffer, Position, target, offset, count);
                Position += count;
            }
        }

        /// <summary>UTF-8 from a zero-padded field; a byte that is no UTF-8 becomes U+FFFD.</summary>
        public string ReadText(int width)
        {
            if (!Has(width))
            {
                return "";
            }

            string text = Utf8.Read(buffer, Position, width);
            Position += width;
            return text;
        }

        private bool Has(int count)
        {
            if (count >= 0 && count <= end - Position)
            {
                return true;
            }

            TooShort = true;
            Position = end;
            return false;
        }
    }
}
