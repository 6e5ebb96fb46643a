namespace LoggerBox.Protocol.Records
{
    /// <summary>Time without samples: lost data is data.</summary>
    public sealed class DropoutRecord
    {
        public long FromMicroseconds;
        public long ToMicroseconds;
        public DropoutReason Reason;
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
