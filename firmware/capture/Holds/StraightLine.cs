using LoggerBox.Capture.Samples;

namespace LoggerBox.Capture.Holds
{
    /// <summary>The straight line through the bins of a stretch by least squares, and the scatter about it. Exact where thirds are not.</summary>
    public sealed class StraightLine
    {
        private const int BinsPerSecond = 1000000 / Bin.Microseconds;

        private readonly BinSpan _span;

        public StraightLine(BinSpan span)
        {
            _span = span;
        }

        /// <summary>Hundredths a second.</summary>
        public long Slope { get; private set; }

        /// <summary>Standard deviation of the bins about the line, hundredths.</summary>
        public long Scatter { get; private set; }

        /// <summary>False where there are too few bins with a reading to tell.</summary>
        public bool Fit(int channel, int begin, int end)
        {
            int readings = _span.Readings(channel, begin, end);
            if (readings < 3 || readings * 2 < end - begin)
            {
                return false;
            }

            // Counted from the middle in half bins, so that it stays whole; a missing bin lies on the mean and takes no part.
            long mean = _span.Mean(channel, begin, end);
            long squares = 0, products = 0, values = 0;
            for (int i = begin; i < end; i++)
            {
                if (_span.Readings(channel, i, i + 1) == 0)
                {
                    continue;
                }

                long k = (2L * i) - begin - end + 1;
                long value = _span.Mean(channel, i, i + 1) - mean;
                squares += k * k;
                products += k * value;
                values += value * value;
            }

            if (squares == 0)
            {
                return false;
            }

            long thousandths = products * 1000 / squares;
            Slope = thousandths * 2 * BinsPerSecond / 1000;
            long left = values - (thousandths * products / 1000);
            Scatter = left <= 0 ? 0 : IntegerMath.SquareRoot(left / (readings - 2));
            return true;
        }
    }
}
