namespace LoggerBox.Protocol.Encoding
{
    /// <summary>How a column of a block is written. Wire codes: never renumbered.</summary>
    public enum ColumnMode : byte
    {
        Raw = 0,
        Constant = 1,
        Delta = 2,
        Average = 3,
        Trend = 4,
    }
}
