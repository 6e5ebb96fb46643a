namespace LoggerBox.Protocol.Link
{
    /// <summary>Raised when an old host and a new logger, or the other way round, would misunderstand each other.</summary>
    public static class LinkVersion
    {
        public const ushort Current = 1;
    }
}
