namespace LoggerBox.Protocol.Records
{
    /// <summary>The last record of a session that was closed in order. A session without one was cut.</summary>
    public sealed class SessionEnd
    {
        public long Microseconds;
        public SessionEndReason Reason;
        public uint SampleSets;

        /// <summary>Bit n set: <see cref="Rules.Step"/> n was captured.</summary>
        public uint StepsCaptured;
    }

    public enum SessionEndReason : byte
    {
        Button = 1,
        LowSupply = 2,
        EndOfRecording = 3,
        StoreFull = 4,
    }
}
