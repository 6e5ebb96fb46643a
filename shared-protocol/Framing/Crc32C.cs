namespace LoggerBox.Protocol.Framing
{
    /// <summary>
    /// CRC-32C, Castagnoli (polynomial 1EDC6F41 reflected, initial value and final exclusive-or FFFFFFFF; check value E3069283): the check of
    /// a whole session. Its polynomial must not be the records' own: a CRC that runs over a record and the record's CRC of the same polynomial
    /// comes out the same for every record of that length, so two sessions of equal record lengths could not be told apart.
    /// </summary>
    public static class Crc32C
    {
        /// <summary>What a running value starts from; the running value of no bytes.</summary>
        public const uint Start = 0;

        private static readonly uint[][] Tables = ReflectedCrc.BuildTables(0x82F63B78);

        /// <summary>The CRC of what gave <paramref name="crc"/>, followed by these bytes: ranges can be chained.</summary>
        public static uint Append(uint crc, byte[] buffer, int offset, int count) => ReflectedCrc.Append(Tables, crc, buffer, offset, count);

        public static uint Of(byte[] buffer, int offset, int count) => Append(Start, buffer, offset, count);
    }
}
