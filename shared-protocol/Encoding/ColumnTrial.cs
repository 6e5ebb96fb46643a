using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Encoding
{
    /// <summary>
    /// Guesses from a column's first values which predictor will take the fewest bits: the one that is off least, each of them taken roughly. It runs
    /// with every sample set; counting the bits of all three would cost the logger five times as much, for hardly a byte.
    /// </summary>
    internal sealed class ColumnTrial
    {
        // A level that follows twice as fast as the predictor's settles as one does whose first values count for more.
        private const int AverageShift = Predictor.AverageShift - 1;

        // Where values lie on one side of the average by no more than 3/8 of what they are off in all, a trend is off by 1/8 more than the average.
        private const int OneSided = 4;
        private const int Least = 8;
        private const int NoiseShift = 3;

        // Of every other difference. Where the average is off by no more than 7/8 of what differences are, a turn stands for the next one, too.
        private const int CalmTimes = 7;
        private const int CalmShift = Predictor.FractionBits - 2;

        // Fewer tell nothing: then it is the one that needs no beginning.
        private const int FewestValues = 1 << TurnShift;

        // Values of a turn, as a shift, and of the average that a slope leads by.
        private const int TurnShift = 3;

        private bool hasBegun;
        private bool hasTrend;
        private bool isCalm;
        private int looked;
        private int deltaOff;
        private int averageLevel;
        private int averageOff;
        private int trendLevel;
        private int trendSlope;
        private int trendOff;

        /// <summary>The predictor that was off least.</summary>
        public ColumnMode Best
        {
            get
            {
                int delta = deltaOff << (Predictor.FractionBits + 1);
                bool isDelta = looked < FewestValues || (delta <= averageOff && delta <= trendOff);
                return isDelta ? ColumnMode.Delta : averageOff <= trendOff ? ColumnMode.Average : ColumnMode.Trend;
            }
        }

        public void Begin()
        {
            hasBegun = false;
            hasTrend = false;
            isCalm = false;
            looked = 0;
            deltaOff = averageOff = trendOff = 0;
        }

        /// <summary>Looks at a column's values from..to (to not included), two at a time: an odd one is left out.</summary>
        public void Take(short[] column, int from, int to)
        {
            if (isCalm)
            {
                isCalm = false;
                return;
            }

            int first = from;
            while (!hasBegun && first < to)
            {
                averageLevel = column[first] << Predictor.FractionBits;
                hasBegun = column[first] != SampleSet.Missing;
                first += hasBegun ? 0 : 1;
            }

            int level = averageLevel;
            int deltas = 0;
            int averages = 0;
            int sum = 0;

            // An average begins again where a value lies far outside what was usual so far.
            int jump = (5 * averageOff / (looked + 1)) + (4 << Predictor.FractionBits);
            for (int row = first; row < to - 1; row += 2)
            {
                int one = column[row];
                int two = column[row + 1];
                if (one == SampleSet.Missing || two == SampleSet.Missing)
                {
                    continue;
                }

                int off = two - one;
                deltas += off < 0 ? -off : off;

                one <<= Predictor.FractionBits;
                int far = one - level;
                sum += far;
                off = far < 0 ? -far : far;
                averages += off;
                level = off > jump ? one : level + (far >> AverageShift);

                two <<= Predictor.FractionBits;
                far = two - level;
                sum += far;
                off = far < 0 ? -far : far;
                averages += off;
                level = off > jump ? two : level + (far >> AverageShift);
            }

            looked += to - from;
            averageLevel = level;
            if ((sum < 0 ? -sum : sum) * Least > averages * OneSided)
            {
                TakeTrend(column, first, to, sum);
            }
            else
            {
                hasTrend = false;
                isCalm = averages < (deltas * CalmTimes) << CalmShift;
                deltas += isCalm ? deltas : 0;
                averages += isCalm ? averages : 0;
                trendOff += averages + (averages >> NoiseShift);
            }

            deltaOff += deltas;
            averageOff += averages;
        }

        // Where values lie mostly on one side of the average: elsewhere a trend is further off than it is.
        private void TakeTrend(short[] column, int from, int to, int sum)
        {
            int foretold = trendLevel;
            int slope = trendSlope;
            int trends = trendOff;
            if (!hasTrend)
            {
                slope = sum >> (TurnShift + AverageShift);
                foretold = (column[from > 0 ? from - 1 : 0] << Predictor.FractionBits) + slope;
            }

            for (int row = from; row < to; row++)
            {
                int value = column[row];
                if (value != SampleSet.Missing)
                {
                    int far = (value << Predictor.FractionBits) - foretold;
                    trends += far < 0 ? -far : far;
                    slope += far >> Predictor.SlopeShift;
                    foretold += (far >> Predictor.TrendShift) + slope;
                }
            }

            hasTrend = true;
            trendLevel = foretold;
            trendSlope = slope;
            trendOff = trends;
        }
    }
}
