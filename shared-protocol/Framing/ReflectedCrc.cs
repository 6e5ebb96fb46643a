namespace LoggerBox.Protocol.Framing
{
    /// <summary>
    /// A 32-bit CRC that runs from the lowest bit, four bytes a step, with four tables of its polynomial (4 KB): what a start of the logger
    /// reads of its card takes less than half the time that one table takes.
    /// </summary>
    internal static class ReflectedCrc
    {
        private const int TableCount = 4;
        private const int TableLength = 256;

        public static uint Append(uint[][] tables, uint crc, byte[] buffer, int offset, int count)
        {
            uint[] fourth = tables[3];
            uint[] third = tables[2];
            uint[] second = tables[1];
            uint[] first = tables[0];
            uint register = ~crc;
            int i = offset;
            int end = offset + count;
            int endOfFours = end - 3;
            while (i < endOfFours)
            {
                register = fourth[(register ^ buffer[i]) & 0xFF] ^ third[((register >> 8) ^ buffer[i + 1]) & 0xFF]
                    ^ second[((register >> 16) ^ buffer[i + 2]) & 0xFF] ^ first[(register >> 24) ^ buffer[i + 3]];
                i += 4;
            }

            while (i < end)
            {
                register = first[(register ^ buffer[i]) & 0xFF] ^ (register >> 8);
                i++;
            }

            return ~register;
        }

        /// <summary>The polynomial with its bits reversed. Each further table is the one before it, a byte of zero later.</summary>
        public static uint[][] BuildTables(uint reversedPolynomial)
        {
            uint[][] tables = new uint[TableCount][];
            tables[0] = new uint[TableLength];
            for (uint i = 0; i < TableLength; i++)
            {
                tables[0][i] = Remainder(i, reversedPolynomial);
            }

            for (int table = 1; table < TableCount; table++)
            {
                tables[table] = new uint[TableLength];
                for (int i = 0; i < TableLength; i++)
                {
                    uint before = tables[table - 1][i];
                    tables[table][i] = tables[0][before & 0xFF] ^ (before >> 8);
                }
            }

            return tables;
        }

        private static uint Remainder(uint value, uint reversedPolynomial)
        {
            for (int bit = 0; bit < 8; bit++)
            {
                value = (value & 1) != 0 ? (value >> 1) ^ reversedPolynomial : value >> 1;
            }

            return value;
        }
    }
}
