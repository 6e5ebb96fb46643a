namespace LoggerBox.Protocol.Records
{
    /// <summary>What stands around a record's body. One object is filled again and again.</summary>
    public sealed class Envelope
    {
        public RecordCode Code;
        public uint SessionNumber;
        public ushort BootCount;

        /// <summary>Counts a session's records from 0; a jump is a lost record.</summary>
        public uint Sequence;

        /// <summary>Where the body lies in the buffer that was read.</summary>
        public int BodyOffset;
        public int BodyLength;

        public int RecordLength => BodyLength + RecordFormat.EnvelopeLength;
    }

    public enum EnvelopeResult
    {
        /// <summary>A whole record stands here and its CRC agrees.</summary>
        Complete,

        /// <summary>What is here may be the beginning of a record; more bytes will tell.</summary>
        TooShort,

        /// <summary>No record begins here: search the next mark.</summary>
        Damaged,
    }
}
