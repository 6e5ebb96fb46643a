namespace LoggerBox.Protocol.Records
{
    /// <summary>What a record is. Codes are never used again for something else; a reader skips those it does not know.</summary>
    public enum RecordCode : byte
    {
        SessionHeader = 1,
        Plan = 2,
        SampleBlock = 3,
        Event = 4,
        Hold = 5,
        Engagement = 6,
        RunUp = 7,
        Dropout = 8,
        SessionEnd = 9,

        /// <summary>Between sessions only: never part of one.</summary>
        SessionConfirmation = 10,
    }
}
