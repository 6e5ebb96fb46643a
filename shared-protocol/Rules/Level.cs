namespace LoggerBox.Protocol.Rules
{
    /// <summary>How an observation stands to what it should be. The numbers index the columns of <see cref="CauseMatrix.Points"/>.</summary>
    public enum Level : byte
    {
        VeryLow = 0,
        Low = 1,
        Normal = 2,
        High = 3,
        VeryHigh = 4,
    }
}
