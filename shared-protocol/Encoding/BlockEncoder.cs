using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>
    /// Encodes the columns of one block while their sets come: with each set the rows of one column since its last turn are tried, and as many of those
    /// that are chosen are written as there is time for. No call does more than its share, and none allocates.
    /// </summary>
    public sealed class BlockEncoder
    {
        public const int ModeBits = 4;

        // From so many sets on columns are written.
        private const int TriedSets = 96;

        // A column with fewer values waits for more, near a block's end for less: to begin takes as long as to write some.
        private const int FewestAtATime = 18;
        private const int FewestOfLast = 6;
        private const int FirstOfLast = 100;

        private const int ValuesAtATime = 9;

        // To begin with a column is the work of so many values.
        private const int Beginning = 3;

        private readonly ColumnEncoder[] columns = new ColumnEncoder[Channel.Count];

        public BlockEncoder(short[][] columns)
        {
            for (int i = 0; i < columns.Length; i++)
            {
                this.columns[i] = new ColumnEncoder(columns[i]);
            }
        }

        // The column that is written next.
        private int next;
        private bool isChosen;

        // Sets over which predictors were tried.
        private int tried;

        /// <summary>There may be something to write.</summary>
        public bool MayWrite;

        /// <summary>Sets that have come.</summary>
        public int Count;

        /// <summary>After Finish: bytes of the encoded columns, their modes among them.</summary>
        public int Length;

        public void Begin()
        {
            Count = 0;
            MayWrite = false;
            isChosen = false;
            tried = int.MaxValue;
            for (int i = 0; i < columns.Length; i++)
            {
                columns[i].Begin();
            }
        }

        /// <summary>The newest set was the turn of a column whose predictors were tried.</summary>
        public bool HasTried => Count <= tried && ((Count + Channel.Count - 1) & Channel.Count) == 0;

        /// <summary>Calls of <see cref="Finish"/> that are to come, about.</summary>
        public int PartsLeft
        {
            get
            {
                int left = 0;
                for (int i = 0; i < columns.Length; i++)
                {
                    left += columns[i].Left + Beginning;
                }

                return (left / ValuesAtATime) + (isChosen ? 1 : columns.Length + 1);
            }
        }

        /// <summary>Takes the next set of the columns.</summary>
        /// <param name="count">So many have come with it.</param>
        public void Add(int count)
        {
            Count = count;
            if (((count + Channel.Count - 1) & Channel.Count) == 0)
            {
                MayWrite |= columns[count & (Channel.Count - 1)].TakeUpTo(count) >= (count < FirstOfLast ? FewestAtATime : FewestOfLast);
                if (count == TriedSets)
                {
                    Choose();
                }
            }
        }

        /// <summary>Decides by what has come so far how columns are written, where that is still open; they are with the next set that is taken.</summary>
        public void Choose()
        {
            tried = isChosen ? tried : Count;
            isChosen = true;
            for (int i = 0; i < columns.Length; i++)
            {
                columns[i].Choose();
            }
        }

        /// <summary>Writes so many values at most, column after column. Returns how many it was the work of.</summary>
        public int Write(int values) => Write(values, Count < FirstOfLast ? FewestAtATime : FewestOfLast);

        private int Write(int values, int least)
        {
            int left = values;
            int passed = 0;
            while (left > 0 && passed < Channel.Count)
            {
                ColumnEncoder column = columns[next];
                if (column.Left >= least)
                {
                    left -= column.Write(left) + Beginning;
                    passed = 0;
                }
                else
                {
                    passed++;
                }

                next = (next + 1) & (Channel.Count - 1);
            }

            MayWrite = left <= 0;
            return values - left;
        }

        /// <summary>Writes some of what is left; true once all is written. A full block has little left, one that ends early more.</summary>
        public bool Finish()
        {
            // Where predictors are still tried, what came since the column's last turn takes a call of its own.
            for (int i = 0; i < columns.Length; i++)
            {
                if (columns[i].TakeLast(Count))
                {
                    return false;
                }
            }

            MayWrite = true;

            Write(ValuesAtATime, 1);
            for (int i = 0; i < columns.Length; i++)
            {
                if (columns[i].Left > 0)
                {
                    return false;
                }
            }

            Length = Channel.Count * ModeBits / 8;
            for (int i = 0; i < columns.Length; i++)
            {
                columns[i].Finish();
                Length += columns[i].Length;
            }

            return true;
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
