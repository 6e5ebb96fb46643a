using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>
    /// Encodes one column while it comes. Over three quarters of a block the predictors are compared; over the last quarter the best of
    /// them writes four values for each that comes, so that a full column is written with its last value and no call does more than its share.
    /// </summary>
    public sealed class ColumnEncoder
    {
        private const int ComparedValues = SampleBlock.Capacity * 3 / 4;
        private const int ValuesAtOnce = 4;

        // A column that is longer than its plain values is given up.
        private const int PlainBytes = 2;
        private const int PlainLength = SampleBlock.Capacity * PlainBytes;
        private const int LongestValue = (ColumnCode.LongestBits / 8) + 1;

        private readonly short[] column;
        private readonly ColumnCode delta = new ColumnCode(new DeltaPredictor());
        private readonly ColumnCode average = new ColumnCode(new AveragePredictor());
        private readonly ColumnCode trend = new ColumnCode(new TrendPredictor());
        private readonly BitWriter bits = new BitWriter(PlainLength + LongestValue);
        private int deltaBits;
        private int averageBits;
        private int trendBits;
        private bool isConstant;
        private ColumnCode? chosen;
        private ColumnMode chosenMode;
        private int written;

        public ColumnEncoder(short[] column)
        {
            this.column = column;
            Begin();
        }

        /// <summary>Values that have come.</summary>
        public int Count;

        /// <summary>After Finish: the mode in which the column is shortest, and its bytes in it.</summary>
        public ColumnMode Mode;
        public int Length;

        public void Begin()
        {
            Count = 0;
            deltaBits = 0;
            averageBits = 0;
            trendBits = 0;
            isConstant = true;
            chosen = null;
            delta.Begin();
            average.Begin();
            trend.Begin();
        }

        /// <summary>Takes the column's next value.</summary>
        public void Add()
        {
            int value = column[Count];
            isConstant = isConstant && value == column[0];
            Count++;
            if (chosen != null)
            {
                WriteValues(ValuesAtOnce);
                return;
            }

            deltaBits += delta.Put(value, null);
            averageBits += average.Put(value, null);
            trendBits += trend.Put(value, null);
            if (Count == ComparedValues)
            {
                Choose();
            }
        }

        /// <summary>Writes what is left; more values may still follow.</summary>
        public void Finish()
        {
            if (chosen == null)
            {
                Choose();
            }

            WriteValues(Count);
            Mode = ColumnMode.Raw;
            Length = Count * PlainBytes;
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

            for (int i = 0; i < Length / PlainBytes; i++)
            {
                writer.WriteByte((byte)(column[i] >> 8));
                writer.WriteByte((byte)column[i]);
            }
        }

        private void Choose()
        {
            bool isDelta = deltaBits <= averageBits && deltaBits <= trendBits;
            bool isAverage = !isDelta && averageBits <= trendBits;
            chosen = isDelta ? delta : isAverage ? average : trend;
            chosenMode = isDelta ? ColumnMode.Delta : isAverage ? ColumnMode.Average : ColumnMode.Trend;
            chosen.Begin();
            bits.Begin();
            written = 0;
        }

        private void WriteValues(int most)
        {
            for (int left = most; left > 0 && written < Count && bits.Length < PlainLength; left--)
            {
                chosen!.Put(column[written++], bits);
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
