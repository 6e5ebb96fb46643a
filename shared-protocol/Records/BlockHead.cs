namespace LoggerBox.Protocol.Records
{
    /// <summary>Beginning of a sample block: 8 bytes for a full block of a usual logger, 14 for anything else that can be.</summary>
    public sealed class BlockHead
    {
        public const byte FullFlag = 0x10;
        public const byte WideFlag = 0x20;
        public const byte EncodingMask = 0x0F;

        /// <summary>What a narrow interval counts.</summary>
        public const int NarrowIntervalMicroseconds = 100;

        private const long NarrowTimeLimit = 1L << 48;

        public byte Encoding;
        public long FirstMicroseconds;
        public uint IntervalMicroseconds;
        public int Count;

        public void Write(ByteWriter writer)
        {
            bool full = Count == SampleBlock.Capacity;
            bool wide = FirstMicroseconds < 0 || FirstMicroseconds >= NarrowTimeLimit
                || IntervalMicroseconds % NarrowIntervalMicroseconds != 0 || IntervalMicroseconds > byte.MaxValue * NarrowIntervalMicroseconds;
            writer.WriteByte((byte)(Encoding | (full ? FullFlag : 0) | (wide ? WideFlag : 0)));
            if (wide)
            {
                writer.WriteInt64(FirstMicroseconds);
                writer.WriteUInt32(IntervalMicroseconds);
            }
            else
            {
                writer.WriteUInt32((uint)FirstMicroseconds);
                writer.WriteUInt16((ushort)(FirstMicroseconds >> 32));
                writer.WriteByte((byte)(IntervalMicroseconds / NarrowIntervalMicroseconds));
            }

            if (!full)
            {
                writer.WriteByte((byte)Count);
            }
        }

        /// <summary>False for a form or an encoding that is not known, and for more sets than a block holds.</summary>
        public bool TryRead(ByteReader reader)
        {
            int form = reader.ReadByte();
            Encoding = (byte)(form & EncodingMask);
            bool wide = (form & WideFlag) != 0;
            FirstMicroseconds = wide ? reader.ReadInt64() : reader.ReadUInt32() | ((long)reader.ReadUInt16() << 32);
            IntervalMicroseconds = wide ? reader.ReadUInt32() : (uint)(reader.ReadByte() * NarrowIntervalMicroseconds);
            Count = (form & FullFlag) != 0 ? SampleBlock.Capacity : reader.ReadByte();
            bool known = (form & ~(EncodingMask | FullFlag | WideFlag)) == 0 && Encoding <= SampleBlock.EncodedColumns;
            return known && Count <= SampleBlock.Capacity && !reader.TooShort;
        }
    }
}
