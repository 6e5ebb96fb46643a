namespace LoggerBox.Protocol.Records
{
    /// <summary>Why the logger, or a part of its program, began anew; the numbers are on the wire.</summary>
    public enum RestartReason : byte
    {
        ThreadEnded = 1,
        ThreadStuck = 2,
        ThreadEndedOften = 3,
        PowerReturned = 4,
    }
}
