using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>
    /// How far each predictor is off over a column's first values: the one that is off least takes the fewest bits, or hardly more. It runs with
    /// every sample set, so the three stand in one loop, their state in locals.
    /// </summary>
    internal sealed class ColumnTrial
    {
        // An error is worth its bits, not its size: a jump counts for no more than this, folded.
        private const int MostOfOne = 512;

        private bool hasBegun;
        private int last;
        private int deltaOff;
        private int averageLevel;
        private int averageTaken;
        private int averageShift;
        private int averageMean;
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
            deltaOff = averageOff = trendOff = 0;
            averageMean = ColumnCode.FirstMean;
        }

        /// <summary>Looks at a column's values from..to (to not included).</summary>
        public void Take(short[] column, int from, int to)
        {
            int row = from;
            while (!hasBegun && row < to)
            {
                int first = column[row++];
                if (first != SampleSet.Missing)
                {
                    hasBegun = true;
                    last = first;
                    BeginAverage(first);
                    trendLevel = first << Predictor.FractionBits;
                    trendSlope = 0;
                }
            }

            TakeDelta(column, row, to);
            TakeAverage(column, row, to);
            TakeTrend(column, row, to);
        }

        private void TakeDelta(short[] column, int from, int to)
        {
            int before = last;
            int off = deltaOff;
            for (int row = from; row < to; row++)
            {
                int value = column[row];
                if (value != SampleSet.Missing)
                {
                    int error = value - before;
                    int folded = (error << 1) ^ (error >> 31);
                    off += folded < MostOfOne ? folded : MostOfOne;
                    before = value;
                }
            }

            last = before;
            deltaOff = off;
        }

        private void TakeAverage(short[] column, int from, int to)
        {
            int level = averageLevel;
            int mean = averageMean;
            int off = averageOff;
            for (int row = from; row < to; row++)
            {
                int value = column[row];
                if (value == SampleSet.Missing)
                {
                    continue;
                }

                int error = value - ((level + Predictor.Half) >> Predictor.FractionBits);
                int folded = (error << 1) ^ (error >> 31);
                off += folded < MostOfOne ? folded : MostOfOne;
                int usual = mean >> ColumnCode.MeanShift;
                mean += folded - usual;
                if (folded > (5 * usual) + 8)
                {
                    BeginAverage(value);
                    level = averageLevel;
                    continue;
                }

                if (averageShift < AveragePredictor.LastShift && ++averageTaken == 2 << averageShift)
                {
                    averageShift++;
                }

                level += ((value << Predictor.FractionBits) - level) >> averageShift;
            }

            averageLevel = level;
            averageMean = mean;
            averageOff = off;
        }

        private void TakeTrend(short[] column, int from, int to)
        {
            int level = trendLevel;
            int slope = trendSlope;
            int off = trendOff;
            for (int row = from; row < to; row++)
            {
                int value = column[row];
                if (value == SampleSet.Missing)
                {
                    continue;
                }

                level += slope;
                int error = value - ((level + Predictor.Half) >> Predictor.FractionBits);
                int folded = (error << 1) ^ (error >> 31);
                off += folded < MostOfOne ? folded : MostOfOne;
                error = (value << Predictor.FractionBits) - level;
                level += error >> TrendPredictor.LevelShift;
                slope += error >> TrendPredictor.SlopeShift;
            }

            trendLevel = level;
            trendSlope = slope;
            trendOff = off;
        }

        private void BeginAverage(int value)
        {
            averageLevel = value << Predictor.FractionBits;
            averageTaken = 1;
            averageShift = 1;
        }
    }
}
