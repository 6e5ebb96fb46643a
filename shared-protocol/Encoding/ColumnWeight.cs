namespace LoggerBox.Protocol.Encoding
{
    /// <summary>What a column would take in each mode, counted while its values come.</summary>
    public sealed class ColumnWeight
    {
        private readonly ColumnCode delta = new ColumnCode(new DeltaPredictor());
        private readonly ColumnCode average = new ColumnCode(new AveragePredictor());
        private readonly ColumnCode trend = new ColumnCode(new TrendPredictor());
        private int deltaBits;
        private int averageBits;
        private int trendBits;
        private int count;
        private int first;
        private bool isConstant;

        /// <summary>The mode that takes fewest bits, and those bits.</summary>
        public ColumnMode Mode;
        public int Bits;

        public void Begin()
        {
            delta.Begin();
            average.Begin();
            trend.Begin();
            deltaBits = 0;
            averageBits = 0;
            trendBits = 0;
            count = 0;
            isConstant = true;
        }

        public void Add(int value)
        {
            if (isConstant)
            {
                first = count == 0 ? value : first;
                isConstant = value == first;
            }

            deltaBits += delta.Put(value, null);
            averageBits += average.Put(value, null);
            trendBits += trend.Put(value, null);
            count++;
        }

        public void Choose()
        {
            Mode = ColumnMode.Raw;
            Bits = count * ColumnCode.ValueBits;
            Prefer(ColumnMode.Delta, deltaBits);
            Prefer(ColumnMode.Average, averageBits);
            Prefer(ColumnMode.Trend, trendBits);
            if (isConstant)
            {
                Prefer(ColumnMode.Constant, ColumnCode.ValueBits);
            }
        }

        private void Prefer(ColumnMode mode, int bits)
        {
            if (bits < Bits)
            {
                Mode = mode;
                Bits = bits;
            }
        }
    }
}
