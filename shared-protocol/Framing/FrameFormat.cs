namespace LoggerBox.Protocol.Framing
{
    /// <summary>A frame: stuffed (content, CRC-32 of the content), delimiter.</summary>
    public static class FrameFormat
    {
        /// <summary>
        /// Not zero: a serial driver was seen to swallow zero bytes, and losing delimiters loses every frame.
        /// </summary>
        public const byte Delimiter = 0xA5;

        /// <summary>Longest content: a command code and its message.</summary>
        public const int MaxContent = 1152;

        public const int CrcLength = 4;

        /// <summary>Longest frame on the line, delimiter included.</summary>
        public const int MaxFrame = MaxContent + CrcLength + 1 + (MaxContent + CrcLength) / Cobs.LongestRun + 1;
    }
}
