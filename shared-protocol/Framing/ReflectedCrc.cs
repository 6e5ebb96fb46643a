namespace LoggerBox.Protocol.Framing
{
    /// <summary>A 32-bit CRC that runs from the lowest bit, a byte a step, with a table of its polynomial.</summary>
    internal static class ReflectedCrc
    {
        public static uint Append(uint[] table, uint crc, byte[] buffer, int offset, int count)
        {
            uint register = ~crc;
            int end = offset + count;
            for (int i = offset; i < end; i++)
            {
                register = table[(register ^ buffer[i]) & 0xFF] ^ (register >> 8);
            }

            return ~register;
        }

        /// <summary>The polynomial with its bits reversed.</summary>
        public static uint[] BuildTable(uint reversedPolynomial)
        {
            uint[] table = new uint[256];
            for (uint i = 0; i < 256; i++)
            {
                uint value = i;
                for (int bit = 0; bit < 8; bit++)
                {
                    value = (value & 1) != 0 ? (value >> 1) ^ reversedPolynomial : value >> 1;
                }

                table[i] = value;
            }

            return table;
        }
    }
}
