using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>
    /// Encodes the columns of one block while their sets come, with each set the rows of one column since its last turn. No call but an
    /// early Finish does more than its share, and none allocates.
    /// </summary>
    public sealed class BlockEncoder
    {
        public const int ModeBits = 4;

        private readonly ColumnEncoder[] columns = new ColumnEncoder[Channel.Count];

        public BlockEncoder(short[][] columns)
        {
            for (int i = 0; i < columns.Length; i++)
            {
                this.columns[i] = new ColumnEncoder(columns[i]);
            }
        }

        /// <summary>Sets that have come.</summary>
        public int Count;

        /// <summary>After Finish: bytes of the encoded columns, their modes among them.</summary>
        public int Length;

        public void Begin()
        {
            Count = 0;
            for (int i = 0; i < columns.Length; i++)
            {
                columns[i].Begin();
            }
        }

        /// <summary>Takes the next set of the columns.</summary>
        public void Add()
        {
            Count++;
            columns[Count % Channel.Count].TakeUpTo(Count);
        }

        /// <summary>Writes what is left of one column: little for a full block, up to half a block for one that ends early.</summary>
        public void Finish(int column)
        {
            Length = column == 0 ? Channel.Count * ModeBits / 8 : Length;
            columns[column].TakeUpTo(Count);
            columns[column].Finish();
            Length += columns[column].Length;
        }

        /// <summary>After Finish: some column stands as it came, which takes longer to copy.</summary>
        public bool HasRaw
        {
            get
            {
                bool any = false;
                for (int i = 0; i < columns.Length; i++)
                {
                    any |= columns[i].Mode == ColumnMode.Raw;
                }

                return any;
            }
        }

        public void CopyModesTo(ByteWriter writer)
        {
            for (int i = 0; i < columns.Length; i += 2)
            {
                writer.WriteByte((byte)(((int)columns[i].Mode << ModeBits) | (int)columns[i + 1].Mode));
            }
        }

        public void CopyTo(ByteWriter writer, int column) => columns[column].CopyTo(writer);
    }
}
