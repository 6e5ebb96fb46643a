namespace LoggerBox.Capture.Holds
{
    /// <summary>
    /// Mean and scatter of integers in one pass, exact: sums are kept of the distance from the first value, because the textbook sum of
    /// squares loses all digits where the mean is large and the scatter small (NIST StRD NumAcc3 and 4).
    /// </summary>
    public sealed class RunningStatistics
    {
        private long _first;
        private long _sum;
        private long _squares;

        public int Count { get; private set; }

        public void Clear()
        {
            Count = 0;
            _first = _sum = _squares = 0;
        }

        public void Add(long value)
        {
            if (Count == 0)
            {
                _first = value;
            }

            long distance = value - _first;
            Count++;
            _sum += distance;
            _squares += distance * distance;
        }

        /// <summary>Mean times <paramref name="scale"/>, rounded; 0 of nothing.</summary>
        public long MeanScaled(int scale) => Count == 0 ? 0 : (_first * scale) + IntegerMath.DivideRounded(_sum * scale, Count);

        /// <summary>Sample standard deviation (n - 1) times <paramref name="scale"/>; 0 of fewer than two values.</summary>
        public long DeviationScaled(int scale) => Deviation(Count, _sum, _squares, scale);

        /// <summary>The same from sums of distances; <paramref name="squares"/> below 2^63 / count.</summary>
        internal static long Deviation(int count, long sum, long squares, int scale)
        {
            if (count < 2)
            {
                return 0;
            }

            long numerator = (count * squares) - (sum * sum);
            long divisor = (long)count * (count - 1);
            long scaleSquared = (long)scale * scale;
            return numerator < long.MaxValue / scaleSquared
                ? IntegerMath.SquareRoot(numerator * scaleSquared / divisor)
                : IntegerMath.SquareRoot(numerator / divisor) * scale;
        }
    }
}
