namespace LoggerBox.Protocol.Framing
{
    /// <summary>
    /// CRC-32/ISO-HDLC (polynomial 04C11DB7 reflected, initial value and final exclusive-or FFFFFFFF; check value CBF43926).
    /// </summary>
    public static class Crc32
    {
        /// <summary>What a running value starts from; the running value of no bytes.</summary>
        public const uint Start = 0;

        private static readonly uint[] Table = BuildTable();

        /// <summary>The CRC of what gave <paramref name="crc"/>, followed by these bytes: ranges can be chained.</summary>
        public static uint Append(uint crc, byte[] buffer, int offset, int count)
        {
            uint[] table = Table;
            uint register = ~crc;
            int end = offset + count;
            for (int i = offset; i < end; i++)
            {
                register = table[(register ^ buffer[i]) & 0xFF] ^ (register >> 8);
            }

            return ~register;
        }

        public static uint Of(byte[] buffer, int offset, int count) => Append(Start, buffer, offset, count);

        private static uint[] BuildTable()
        {
            uint[] table = new uint[256];
            for (uint i = 0; i < 256; i++)
            {
                uint value = i;
                for (int bit = 0; bit < 8; bit++)
                {
                    value = (value & 1) != 0 ? (value >> 1) ^ 0xEDB88320 : value >> 1;
                }

                table[i] = value;
            }

            return table;
        }
    }
}
