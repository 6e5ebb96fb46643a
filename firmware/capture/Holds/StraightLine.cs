using LoggerBox.Capture.Samples;

namespace LoggerBox.Capture.Holds
{
    /// <summary>The straight line through the bins of a stretch by least squares, and the scatter about it, some bins at a time. Exact where thirds are not.</summary>
    public sealed class StraightLine
    {
        private const int BinsPerSecond = 1000000 / Bin.Microseconds;
        private const int BinsAtATime = 12;

        private readonly BinSpan _span;
        private int _channel;
        private int _readings;
        private int _begin;
        private int _end;
        private int _next;
        private long _mean;
        private long _squares;
        private long _products;
        private long _values;

        public StraightLine(BinSpan span)
        {
            _span = span;
        }

        /// <summary>False where there are too few bins with a reading to tell; then there is nothing to advance.</summary>
        public bool Begin(int channel, int begin, int end)
        {
            _channel = channel;
            _readings = _span.Readings(channel, begin, end);
            _begin = begin;
            _end = end;
            _next = begin;
            _mean = _span.Mean(channel, begin, end);
            _squares = _products = _values = 0;
            return _readings >= 3 && _readings * 2 >= end - begin;
        }

        /// <summary>Takes some bins; true once all were.</summary>
        public bool Advance()
        {
            // Counted from the middle in half bins, so that it stays whole; a missing bin lies on the mean and takes no part.
            int until = IntegerMath.Min(_next + BinsAtATime, _end);
            long k = (2L * _next) - _begin - _end + 1;
            for (int i = _next; i < until; i++)
            {
                if (_span.TryDistance(_channel, i, _mean, out long value))
                {
                    _squares += k * k;
                    _products += k * value;
                    _values += value * value;
                }

                k += 2;
            }

            _next = until;
            return until == _end;
        }

        /// <summary>Hundredths a second.</summary>
        public long Slope => _squares == 0 ? 0 : Thousandths * 2 * BinsPerSecond / 1000;

        /// <summary>Standard deviation of the bins about the line, hundredths.</summary>
        public long Scatter
        {
            get
            {
                long left = _squares == 0 ? 0 : _values - (Thousandths * _products / 1000);
                return left <= 0 ? 0 : IntegerMath.SquareRoot(left / (_readings - 2));
            }
        }

        private long Thousandths => _products * 1000 / _squares;
    }
}
