namespace LoggerBox.BoardParts.Operation
{
    /// <summary>What the logger is doing.</summary>
    public enum LoggerState
    {
        Choosing,
        Recording,
        Ended,
        WithoutCard,
    }
}
