namespace LoggerBox.Protocol.Framing
{
    /// <summary>
    /// CRC-32/ISO-HDLC (polynomial 04C11DB7 reflected, initial value and final exclusive-or FFFFFFFF; check value CBF43926).
    /// </summary>
    public static class Crc32
    {
        /// <summary>What a running value starts from; the running value of no bytes.</summary>
        public const uint Start = 0;

        private static readonly uint[][] Tables = ReflectedCrc.BuildTables(0xEDB88320);

        /// <summary>The CRC of what gave <paramref name="crc"/>, followed by these bytes: ranges can be chained.</summary>
        public static uint Append(uint crc, byte[] buffer, int offset, int count) => ReflectedCrc.Append(Tables, crc, buffer, offset, count);

        public static uint Of(byte[] buffer, int offset, int count) => Append(Start, buffer, offset, count);
    }
}
