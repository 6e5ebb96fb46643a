namespace LoggerBox.Protocol.Records
{
    /// <summary>
    /// Stands in the logger's log between sessions: the host has stored the named session whole. It belongs to no session's bytes.
    /// </summary>
    public sealed class SessionConfirmation : IRecord
    {
        public uint SessionNumber;
        public uint Length;
        public uint Crc;

        public RecordCode Code => RecordCode.SessionConfirmation;

        public void Write(ByteWriter writer)
        {
            writer.WriteUInt32(SessionNumber);
            writer.WriteUInt32(Length);
            writer.WriteUInt32(Crc);
        }

        public bool TryRead(ByteReader reader)
        {
            SessionNumber = reader.ReadUInt32();
            Length = reader.ReadUInt32();
            Crc = reader.ReadUInt32();
            return !reader.TooShort;
        }
    }
}
