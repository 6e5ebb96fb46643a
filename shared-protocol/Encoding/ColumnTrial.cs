using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>
    /// Guesses from a column's first values which predictor will take the fewest bits: the one that is off least, each of them taken roughly. It runs
    /// with every sample set; counting the bits of all three would cost the logger three times as much, for hardly a byte.
    /// </summary>
    internal sealed class ColumnTrial
    {
        private bool hasBegun;
        private int taken;
        private int last;
        private int deltaOff;
        private int averageLevel;
        private int averageOff;
        private int trendLevel;
        private int trendSlope;
        private int trendOff;

        /// <summary>The predictor that was off least.</summary>
        public ColumnMode Best => deltaOff <= averageOff && deltaOff <= trendOff ? ColumnMode.Delta
            : averageOff <= trendOff ? ColumnMode.Average
            : ColumnMode.Trend;

        public void Begin()
        {
            hasBegun = false;
            taken = 0;
            deltaOff = averageOff = trendOff = 0;
        }

        /// <summary>Looks at a column's values from..to (to not included). A missing one ends it.</summary>
        public void Take(short[] column, int from, int to)
        {
            int row = from;
            for (; !hasBegun && row < to; row++)
            {
                TakeFirst(column[row]);
            }

            int before = last;
            int level = averageLevel;
            int foretold = trendLevel;
            int slope = trendSlope;
            int deltas = deltaOff;
            int averages = averageOff;
            int trends = trendOff;

            // An average begins again where a value lies far outside what was usual so far.
            int jump = (5 * averages / (taken + 1)) + 4;
            for (; row < to; row++)
            {
                int value = column[row];
                if (value == SampleSet.Missing)
                {
                    continue;
                }

                int scaled = value << Predictor.FractionBits;
                int off = value - before;
                deltas += off < 0 ? -off : off;
                before = value;

                // Rounded as the predictor's: a value that is hit takes the least.
                int far = scaled - level;
                off = (far + (Predictor.Half - 1)) >> Predictor.FractionBits;
                off = off < 0 ? -off : off;
                averages += off;
                level = off > jump ? scaled : level + (far >> Predictor.AverageShift);

                far = scaled - foretold;
                off = (far + (Predictor.Half - 1)) >> Predictor.FractionBits;
                trends += off < 0 ? -off : off;
                slope += far >> Predictor.SlopeShift;
                foretold += (far >> Predictor.TrendShift) + slope;
            }

            taken = to;
            last = before;
            averageLevel = level;
            trendLevel = foretold;
            trendSlope = slope;
            deltaOff = deltas;
            averageOff = averages;
            trendOff = trends;
        }

        private void TakeFirst(int value)
        {
            hasBegun = value != SampleSet.Missing;
            last = value;
            averageLevel = trendLevel = value << Predictor.FractionBits;
            trendSlope = 0;
        }
    }
}
