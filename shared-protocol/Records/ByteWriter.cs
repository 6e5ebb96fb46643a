namespace LoggerBox.Protocol.Records
{
    /// <summary>Little-endian fields into a caller's buffer. What does not fit sets a flag and is not written: nothing is thrown.</summary>
    public sealed class ByteWriter
    {
        public int Position;
        public bool Overflowed;

        private readonly byte[] buffer;
        private int end;

        public ByteWriter(byte[] buffer)
        {
            this.buffer = buffer;
            end = buffer.Length;
        }

        public void Restart(int offset, int end)
        {
            Position = offset;
            Overflowed = false;
            this.end = end;
        }

        public void WriteByte(byte value)
        {
            if (Fits(1))
            {
                buffer[Position++] = value;
            }
        }

        public void WriteBoolean(bool value) => WriteByte(value ? (byte)1 : (byte)0);

        public void WriteUInt16(ushort value)
        {
            if (Fits(2))
            {
                buffer[Position++] = (byte)value;
                buffer[Position++] = (byte)(value >> 8);
            }
        }

        public void WriteInt16(short value) => WriteUInt16((ushort)value);

        public void WriteUInt32(uint value)
        {
            // Fits, without the call: there are dozens of these in a record.
            int at = Position;
            if (at > end - 4)
            {
                Overflowed = true;
            }
            else
            {
                byte[] bytes = buffer;
                bytes[at] = (byte)value;
                bytes[at + 1] = (byte)(value >> 8);
                bytes[at + 2] = (byte)(value >> 16);
                bytes[at + 3] = (byte)(value >> 24);
                Position = at + 4;
            }
        }

        public void WriteInt32(int value) => WriteUInt32((uint)value);

        public void WriteInt64(long value)
        {
            if (Fits(8))
            {
                WriteUInt32((uint)value);
                WriteUInt32((uint)(value >> 32));
            }
        }

        public void WriteBytes(byte[] source, int offset, int count)
        {
            if (Fits(count))
            {
                System.Array.Copy(source, offset, buffer, Position, count);
                Position += count;
            }
        }

        /// <summary>So many values of a column, each with its lower byte first.</summary>
        public void WriteInt16s(short[] column, int count)
        {
            if (Fits(2 * count))
            {
                byte[] bytes = buffer;
                int at = Position;
                for (int i = 0; i < count; i++)
                {
                    int value = column[i];
                    bytes[at++] = (byte)value;
                    bytes[at++] = (byte)(value >> 8);
                }

                Position = at;
            }
        }

        /// <summary>The same with the higher byte first.</summary>
        public void WriteHighFirst(short[] column, int count)
        {
            if (Fits(2 * count))
            {
                byte[] bytes = buffer;
                int at = Position;
                for (int i = 0; i < count; i++)
                {
                    int value = column[i];
                    bytes[at++] = (byte)(value >> 8);
                    bytes[at++] = (byte)value;
                }

                Position = at;
            }
        }

        /// <summary>UTF-8 in a field of fixed width, zero padded; a longer text is cut between two characters.</summary>
        public void WriteText(string text, int width)
        {
            if (Fits(width))
            {
                Utf8.Write(text, buffer, Position, width);
                Position += width;
            }
        }

        private bool Fits(int count)
        {
            if (count <= end - Position)
            {
                return true;
            }

            Overflowed = true;
            return false;
        }
    }
}
