using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>
    /// Encodes one column while it comes, some rows at a time. Over most of a block the predictors are tried; then the best of them writes, as many rows at
    /// a time as there is time for, so that a full column is all but written with its last value.
    /// </summary>
    public sealed class ColumnEncoder
    {
        // A column that is longer than its plain values is given up.
        private const int PlainBytes = 2;
        private const int PlainLength = SampleBlock.Capacity * PlainBytes;
        private const int LongestValue = (ColumnCode.LongestBits / 8) + 1;

        private readonly short[] column;
        private readonly ColumnTrial trial = new ColumnTrial();
        private readonly ColumnCode delta = new ColumnCode(Predictor.Delta());
        private readonly ColumnCode average = new ColumnCode(Predictor.Average());
        private readonly ColumnCode trend = new ColumnCode(Predictor.Trend());
        private readonly BitWriter bits = new BitWriter(PlainLength + LongestValue);
        private bool isConstant;
        private bool isGivenUp;
        private ColumnCode? chosen;
        private ColumnMode chosenMode;
        private int written;
        private int taken;

        public ColumnEncoder(short[] column)
        {
            this.column = column;
            Begin();
        }

        /// <summary>After Finish: the mode in which the column is shortest, and its bytes in it.</summary>
        public ColumnMode Mode;
        public int Length;

        public void Begin()
        {
            taken = 0;
            isConstant = true;
            chosen = null;
            Left = 0;
            trial.Begin();
        }

        /// <summary>Rows that are to be written and are not.</summary>
        public int Left;

        /// <summary>Takes the column's rows up to this one; returns how many are to be written.</summary>
        public int TakeUpTo(int count)
        {
            int from = taken;
            taken = count;
            for (int row = from; isConstant && row < count; row++)
            {
                isConstant = column[row] == column[0];
            }

            if (chosen == null)
            {
                trial.Take(column, from, count);
            }
            else if (!isGivenUp)
            {
                Left += count - from;
            }

            return Left;
        }

        /// <summary>Takes what has come, however little it is: it is to be written now. True where that was the choice.</summary>
        public bool TakeLast(int count)
        {
            bool isChoice = chosen == null;
            if (taken < count)
            {
                TakeUpTo(count);
            }

            Choose();
            return isChoice;
        }

        /// <summary>Decides on the predictor by what has come so far, where that is still open.</summary>
        public void Choose()
        {
            if (chosen != null)
            {
                return;
            }

            chosenMode = trial.Best;
            chosen = chosenMode == ColumnMode.Delta ? delta : chosenMode == ColumnMode.Average ? average : trend;
            chosen.Begin();
            bits.Begin();
            isGivenUp = false;
            written = 0;
            Left = taken;
        }

        /// <summary>
        /// Writes so many rows at most, fewer where some take longer, and returns how many it was the work of. A column longer than its plain values is given
        /// up where it passes them: in steps, because most never do.
        /// </summary>
        public int Write(int rows)
        {
            int begin = written;
            int end = Left < rows ? taken : written + rows;
            int work = end - begin;
            int length = bits.Length;
            while (written < end && length < PlainLength)
            {
                int most = (PlainLength - length) * 8 / ColumnCode.LongestBits;
                int to = written + (most < 1 ? 1 : most);
                to = to < end ? to : end;
                written = chosen!.Write(column, written, to, bits);
                length = bits.Length;

                // What was not written took its time, and so did one more beginning.
                end -= to - written + 1;
            }

            isGivenUp = length >= PlainLength;
            Left = isGivenUp ? 0 : taken - written;
            return work;
        }

        /// <summary>Decides on the mode, once nothing is left.</summary>
        public void Finish()
        {
            Mode = ColumnMode.Raw;
            Length = taken * PlainBytes;
            Prefer(chosenMode, bits.Length);
            if (isConstant)
            {
                Prefer(ColumnMode.Constant, PlainBytes);
            }
        }

        public void CopyTo(ByteWriter writer)
        {
            if (Mode != ColumnMode.Raw && Mode != ColumnMode.Constant)
            {
                bits.CopyTo(writer);
                return;
            }

            writer.WriteHighFirst(column, Length / PlainBytes);
        }

        private void Prefer(ColumnMode mode, int length)
        {
            if (length < Length)
            {
                Mode = mode;
                Length = length;
            }
        }
    }
}
