namespace LoggerBox.Capture.Samples
{
    /// <summary>What a loop's current says; the numbers are on the wire.</summary>
    public enum LoopState : byte
    {
        NoReading = 0,
        Measuring = 1,
        Open = 2,
        Shorted = 3,
        Saturated = 4,
    }
}
