using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>
    /// Guesses from a column's first values which predictor will take the fewest bits: the one that is off least, each of them taken roughly. It runs
    /// with every sample set; counting the bits of all three would cost the logger three times as much, for hardly a byte.
    /// </summary>
    internal sealed class ColumnTrial
    {
        private const int AverageShift = 4;

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
            int before = last;
            int level = averageLevel;
            int trend = trendLevel;
            int slope = trendSlope;

            // An average begins again where a value lies far outside what was usual so far.
            int jump = (5 * averageOff / (taken + 1)) + 4;
            for (int row = from; row < to; row++)
            {
                int value = column[row];
                if (value == SampleSet.Missing)
                {
                    continue;
                }

                int scaled = value << Predictor.FractionBits;
                if (!hasBegun)
                {
                    hasBegun = true;
                    before = value;
                    level = trend = scaled;
                    slope = 0;
                    continue;
                }

                int off = value - before;
                deltaOff += off < 0 ? -off : off;
                before = value;

                // Rounded as the predictor's: a value that is hit takes the least.
                off = value - ((level + Predictor.Half) >> Predictor.FractionBits);
                off = off < 0 ? -off : off;
                averageOff += off;
                level = off > jump ? scaled : level + ((scaled - level) >> AverageShift);

                trend += slope;
                off = value - ((trend + Predictor.Half) >> Predictor.FractionBits);
                trendOff += off < 0 ? -off : off;
                off = scaled - trend;
                trend += off >> TrendPredictor.LevelShift;
                slope += off >> TrendPredictor.SlopeShift;
            }

            taken = to;
            last = before;
            averageLevel = level;
            trendLevel = trend;
            trendSlope = slope;
        }
    }
}
