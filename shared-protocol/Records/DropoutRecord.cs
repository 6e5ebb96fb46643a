namespace LoggerBox.Protocol.Records
{
    /// <summary>Time without samples: lost data is data.</summary>
    public sealed class DropoutRecord : IRecord
    {
        public long FromMicroseconds;
        public long ToMicroseconds;
        public DropoutReason Reason;

        public RecordCode Code => RecordCode.Dropout;

        public void Write(ByteWriter writer)
        {
            writer.WriteInt64(FromMicroseconds);
            writer.WriteInt64(ToMicroseconds);
            writer.WriteByte((byte)Reason);
        }

        public bool TryRead(ByteReader reader)
        {
            FromMicroseconds = reader.ReadInt64();
            ToMicroseconds = reader.ReadInt64();
            Reason = (DropoutReason)reader.ReadByte();
            return !reader.TooShort;
        }
    }

    public enum DropoutReason : byte
    {
        /// <summary>The loop came late.</summary>
        Overrun = 1,

        /// <summary>The recording that is replayed has a hole here.</summary>
        SourceGap = 2,

        /// <summary>The store is full; recording stopped.</summary>
        StoreFull = 3,
    }
}
