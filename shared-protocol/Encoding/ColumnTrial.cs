using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>
    /// Guesses from some of a column's first values which predictor will take the fewest bits: the one that is off least, each of them taken roughly. It
    /// runs with every other sample set; counting the bits of all three would cost the logger six times as much, for hardly a byte.
    /// </summary>
    internal sealed class ColumnTrial
    {
        // Half the values are looked at: the level follows them twice as fast.
        private const int AverageShift = Predictor.AverageShift - 1;

        private bool hasBegun;
        private int end;
        private int looked;
        private int last;
        private int deltaOff;
        private int averageLevel;
        private int averageOff;
        private int trendLevel;
        private int trendSlope;
        private int trendOff;

        /// <summary>The predictor that was off least.</summary>
        public ColumnMode Best => deltaOff << Predictor.FractionBits <= averageOff && deltaOff << Predictor.FractionBits <= trendOff ? ColumnMode.Delta
            : averageOff <= trendOff ? ColumnMode.Average
            : ColumnMode.Trend;

        public void Begin()
        {
            hasBegun = false;
            end = 0;
            looked = 0;
            deltaOff = averageOff = trendOff = 0;
        }

        /// <summary>Looks at a column's values from..to (to not included); some since the last look may be left out.</summary>
        public void Take(short[] column, int from, int to)
        {
            int row = from;
            for (; !hasBegun && row < to; row++)
            {
                TakeFirst(column[row]);
            }

            SkipTo(column, row);
            int before = last;
            int level = averageLevel;
            int foretold = trendLevel;
            int slope = trendSlope;
            int deltas = deltaOff;
            int averages = averageOff;
            int trends = trendOff;

            // An average begins again where a value lies far outside what was usual so far.
            int jump = (5 * averages / (looked + 1)) + (4 << Predictor.FractionBits);
            looked += to - from;
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
                off = far < 0 ? -far : far;
                averages += off;
                level = off > jump ? scaled : level + (far >> AverageShift);

                far = scaled - foretold;
                trends += far < 0 ? -far : far;
                slope += far >> Predictor.SlopeShift;
                foretold += (far >> Predictor.TrendShift) + slope;
            }

            end = to;
            last = before;
            averageLevel = level;
            trendLevel = foretold;
            trendSlope = slope;
            deltaOff = deltas;
            averageOff = averages;
            trendOff = trends;
        }

        // The trend went on towards the value before: half way between where it would have gone by itself and that.
        private void SkipTo(short[] column, int row)
        {
            if (row > end && end > 0 && column[row - 1] != SampleSet.Missing)
            {
                last = column[row - 1];
                trendLevel = ((trendLevel + (trendSlope * (row - end)) + (last << Predictor.FractionBits)) >> 1) + (trendSlope / 2);
            }
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
