namespace LoggerBox.Protocol.Records
{
    /// <summary>Little-endian fields from a caller's buffer. Reading past the end gives zero and sets a flag: nothing is thrown.</summary>
    public sealed class ByteReader
    {
        public int Position;
        public bool TooShort;

        internal readonly byte[] Buffer;
        internal int End;

        public ByteReader(byte[] buffer)
        {
            Buffer = buffer;
            End = buffer.Length;
        }

        public int Remaining => End - Position;

        public void Restart(int offset, int count)
        {
            Position = offset;
            End = offset + count;
            TooShort = false;
        }

        public byte ReadByte() => Has(1) ? Buffer[Position++] : (byte)0;

        public bool ReadBoolean() => ReadByte() != 0;

        public ushort ReadUInt16()
        {
            if (!Has(2))
            {
                return 0;
            }

            int value = Buffer[Position] | (Buffer[Position + 1] << 8);
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

            uint value = Buffer[Position] | ((uint)Buffer[Position + 1] << 8)
                | ((uint)Buffer[Position + 2] << 16) | ((uint)Buffer[Position + 3] << 24);
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
                System.Array.Copy(Buffer, Position, target, offset, count);
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

            string text = Utf8.Read(Buffer, Position, width);
            Position += width;
            return text;
        }

        private bool Has(int count)
        {
            if (count >= 0 && count <= End - Position)
            {
                return true;
            }

            TooShort = true;
            Position = End;
            return false;
        }
    }
}
