namespace LoggerBox.Protocol.Records
{
    /// <summary>The last record of a session that was closed in order. A session without one was cut.</summary>
    public sealed class SessionEnd : IRecord
    {
        public long Microseconds;
        public SessionEndReason Reason;
        public uint SampleSets;

        /// <summary>Bit n set: <see cref="Rules.Step"/> n was captured.</summary>
        public uint StepsCaptured;

        public RecordCode Code => RecordCode.SessionEnd;

        public void Write(ByteWriter writer)
        {
            writer.WriteInt64(Microseconds);
            writer.WriteByte((byte)Reason);
            writer.WriteUInt32(SampleSets);
            writer.WriteUInt32(StepsCaptured);
        }

        public bool TryRead(ByteReader reader)
        {
            Microseconds = reader.ReadInt64();
            Reason = (SessionEndReason)reader.ReadByte();
            SampleSets = reader.ReadUInt32();
            StepsCaptured = reader.ReadUInt32();
            return !reader.TooShort;
        }
    }

    public enum SessionEndReason : byte
    {
        Button = 1,
        LowSupply = 2,
        EndOfRecording = 3,
        StoreFull = 4,
    }
}
