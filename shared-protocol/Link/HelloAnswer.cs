using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Logger: who it is and what it has.</summary>
    public sealed class HelloAnswer : IMessage
    {
        /// <summary>Link version that the logger speaks.</summary>
        public ushort Version;

        /// <summary><see cref="RecordFormat.Version"/> of what it stores.</summary>
        public byte RecordVersion;

        public uint LoggerId;
        public ushort BootCount;
        /// <summary>Its clock, microseconds since boot.</summary>
        public long Microseconds;

        /// <summary>Seconds since 1970 UTC; 0 where it has no valid clock.</summary>
        public uint UtcSeconds;

        public long FreeBytes;
        public long CapacityBytes;
        public ushort SessionCount;
        /// <summary>The last session is still being recorded.</summary>
        public bool Recording;

        public MessageCode Code => MessageCode.HelloAnswer;

        public void Write(ByteWriter writer)
        {
            writer.WriteUInt16(Version);
            writer.WriteByte(RecordVersion);
            writer.WriteUInt32(LoggerId);
            writer.WriteUInt16(BootCount);
            writer.WriteInt64(Microseconds);
            writer.WriteUInt32(UtcSeconds);
            writer.WriteInt64(FreeBytes);
            writer.WriteInt64(CapacityBytes);
            writer.WriteUInt16(SessionCount);
            writer.WriteBoolean(Recording);
        }

        public bool TryRead(ByteReader reader)
        {
            Version = reader.ReadUInt16();
            RecordVersion = reader.ReadByte();
            LoggerId = reader.ReadUInt32();
            BootCount = reader.ReadUInt16();
            Microseconds = reader.ReadInt64();
            UtcSeconds = reader.ReadUInt32();
            FreeBytes = reader.ReadInt64();
            CapacityBytes = reader.ReadInt64();
            SessionCount = reader.ReadUInt16();
            Recording = reader.ReadBoolean();
            return !reader.TooShort;
        }
    }
}
