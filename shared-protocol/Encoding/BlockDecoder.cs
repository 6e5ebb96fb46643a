using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>Decodes the columns of one block. Whatever the bits are, it ends after the block's values and writes nowhere else.</summary>
    public sealed class BlockDecoder
    {
        private readonly short[][] columns;
        private readonly ColumnCode[] codes = ColumnCodes.ByMode();
        private readonly BitReader bits = new BitReader();
        private readonly int[] modes = new int[Channel.Count];

        public BlockDecoder(short[][] columns)
        {
            this.columns = columns;
        }

        /// <summary>False where a mode is unknown; where bytes were missing, the reader says so.</summary>
        public bool TryRead(ByteReader reader, int count)
        {
            bits.Begin(reader);
            for (int channel = 0; channel < modes.Length; channel++)
            {
                modes[channel] = bits.Read(BlockEncoder.ModeBits);
                if (modes[channel] >= ColumnCodes.Count)
                {
                    return false;
                }
            }

            bits.End();
            for (int channel = 0; channel < modes.Length; channel++)
            {
                bits.Begin(reader);
                ReadColumn(columns[channel], (ColumnMode)modes[channel], count);
                bits.End();
            }

            return true;
        }

        private void ReadColumn(short[] column, ColumnMode mode, int count)
        {
            if (mode == ColumnMode.Raw || mode == ColumnMode.Constant)
            {
                for (int row = 0; row < count; row++)
                {
                    column[row] = row > 0 && mode == ColumnMode.Constant ? column[0] : (short)bits.Read(ColumnCode.ValueBits);
                }

                return;
            }

            ColumnCode code = codes[(int)mode];
            code.Begin();
            code.Read(bits, column, count);
        }
    }
}
