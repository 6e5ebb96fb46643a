namespace LoggerBox.Protocol.Records
{
    /// <summary>The measured quantities of a sample set, in wire order.</summary>
    public static class Channel
    {
        public const int Speed = 0;
        public const int Main = 1;
        public const int Clutch = 2;
        public const int Converter = 3;
        public const int Count = 4;
    }
}
