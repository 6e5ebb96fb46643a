using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>
    /// Encodes the columns of one block. Bits are counted set by set while the block fills, so that the modes are known when it closes;
    /// the writing then goes in slices. No call does more than its share, and none allocates.
    /// </summary>
    public sealed class BlockEncoder
    {
        /// <summary>Values that one call of <see cref="WriteSlice"/> writes at most: 64 calls close a full block.</summary>
        public const int SliceValues = 8;

        public const int ModeBits = 4;

        private readonly short[][] columns;
        private readonly ColumnWeight[] weights = new ColumnWeight[Channel.Count];
        private readonly ColumnCode[] codes;
        private readonly BitWriter writer = new BitWriter(Channel.Count * SampleBlock.Capacity * 2);

        private bool isClosing;
        private int channel;
        private int row;

        /// <summary>Sets that were counted.</summary>
        public int Count;

        /// <summary>After the last slice: the encoded columns are shorter than plain ones.</summary>
        public bool IsShorter;

        public BlockEncoder(short[][] columns)
        {
            this.columns = columns;
            codes = ColumnCodes.ByMode();
            for (int i = 0; i < weights.Length; i++)
            {
                weights[i] = new ColumnWeight();
            }

            Begin();
        }

        public byte[] Bytes => writer.Bytes;

        public int Length => writer.Length;

        public void Begin()
        {
            Count = 0;
            isClosing = false;
            for (int i = 0; i < weights.Length; i++)
            {
                weights[i].Begin();
            }
        }

        /// <summary>Counts the next set of the columns.</summary>
        public void Add()
        {
            isClosing = false;
            for (int i = 0; i < weights.Length; i++)
            {
                weights[i].Add(columns[i][Count]);
            }

            Count++;
        }

        /// <summary>Writes the next few values; true when nothing is left to write. A set added later begins the writing anew.</summary>
        public bool WriteSlice()
        {
            if (!isClosing)
            {
                Close();
            }

            for (int left = SliceValues; left > 0 && channel < Channel.Count; left--)
            {
                WriteValue();
            }

            return channel == Channel.Count;
        }

        private void Close()
        {
            isClosing = true;
            row = 0;
            int bits = Channel.Count * ModeBits;
            writer.Begin();
            for (int i = 0; i < weights.Length; i++)
            {
                weights[i].Choose();
                bits += weights[i].Bits;
                writer.Write((int)weights[i].Mode, ModeBits);
            }

            IsShorter = (bits + 7) / 8 < Channel.Count * Count * 2;
            channel = IsShorter ? 0 : Channel.Count;
        }

        private void WriteValue()
        {
            ColumnMode mode = weights[channel].Mode;
            int value = columns[channel][row];
            if (mode == ColumnMode.Raw || mode == ColumnMode.Constant)
            {
                writer.Write(value & 0xFFFF, ColumnCode.ValueBits);
            }
            else
            {
                ColumnCode code = codes[(int)mode];
                if (row == 0)
                {
                    code.Begin();
                }

                code.Put(value, writer);
            }

            row++;
            if (row == Count || mode == ColumnMode.Constant)
            {
                NextColumn();
            }
        }

        private void NextColumn()
        {
            row = 0;
            channel++;
            if (channel == Channel.Count)
            {
                writer.End();
            }
        }
    }
}
