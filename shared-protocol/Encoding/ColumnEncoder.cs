using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>
    /// Encodes one column while it comes, some rows at a time. Over most of a block the predictors are tried; over the rest
    /// of it the best of them writes four values for each that comes, so that a full column is all but written with its last
    /// value and no call does more than its share.
    /// </summary>
    public sealed class ColumnEncoder
    {
        /// <summary>From so many values on, columns are written.</summary>
        public const int TriedValues = 96;

        // With four rows a turn there are eight turns from the choice on. The first has looked at its rows, too.
        private const int WrittenAtFirst = 4;
        private const int WrittenATurn = 15;

        // A column that is longer than its plain values is given up.
        private const int PlainBytes = 2;
        private const int PlainLength = SampleBlock.Capacity * PlainBytes;
        private const int LongestValue = (ColumnCode.LongestBits / 8) + 1;

        private readonly short[] column;
        private readonly ColumnTrial trial = new ColumnTrial();
        private readonly ColumnCode delta = new ColumnCode(new DeltaPredictor());
        private readonly ColumnCode average = new ColumnCode(new AveragePredictor());
        private readonly ColumnCode trend = new ColumnCode(new TrendPredictor());
        private readonly BitWriter bits = new BitWriter(PlainLength + LongestValue);
        private bool isConstant;
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
            trial.Begin();
        }

        /// <summary>Takes the column's rows up to this one.</summary>
        public void TakeUpTo(int count)
        {
            int from = taken;
            taken = count;
            for (int row = from; isConstant && row < count; row++)
            {
                isConstant = column[row] == column[0];
            }

            int most = WrittenATurn;
            if (chosen == null)
            {
                most = WrittenAtFirst;
                int to = count < TriedValues ? count : TriedValues;
                trial.Take(column, from, to);
                if (to == TriedValues)
                {
                    Choose();
                }
            }

            if (chosen != null)
            {
                WriteUpTo(written + most);
            }
        }

        /// <summary>Writes what is left; more rows may still follow.</summary>
        public void Finish()
        {
            if (chosen == null)
            {
                Choose();
            }

            WriteUpTo(taken);
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

        private void Choose()
        {
            chosenMode = trial.Best;
            chosen = chosenMode == ColumnMode.Delta ? delta : chosenMode == ColumnMode.Average ? average : trend;
            chosen.Begin();
            bits.Begin();
            written = 0;
        }

        // A column longer than its plain values is given up where it passes them: in steps, because most never do.
        private void WriteUpTo(int row)
        {
            int end = row < taken ? row : taken;
            while (written < end && bits.Length < PlainLength)
            {
                int most = (PlainLength - bits.Length) * 8 / ColumnCode.LongestBits;
                int to = written + (most < 1 ? 1 : most);
                to = to < end ? to : end;
                chosen!.Write(column, written, to, bits);
                written = to;
            }
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
