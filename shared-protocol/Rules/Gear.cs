namespace LoggerBox.Protocol.Rules
{
    /// <summary>The direction that the selector asks for, as tagged; the numbers are on the wire.</summary>
    public enum Gear : byte
    {
        Unknown = 0,
        Neutral = 1,
        Forward = 2,
        Reverse = 3,
    }
}
