using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>
    /// Takes single wild readings (ignition bursts, one lost word on the bus) out of one channel: a reading far from the median of the
    /// five around it is left out, not replaced. Monotone ramps pass untouched. The output runs two readings late.
    /// </summary>
    public sealed class SpikeFilter
    {
        private const int Width = 5;
        private const int Middle = Width / 2;

        // Of the mean distance from the median of five, which is about half a standard deviation: Gaussian noise stays nearly whole.
        private const int DeviationsAllowed = 8;
        private const int Smoothing = 32;

        private readonly int _floor;
        private readonly int[] _window = new int[Width];
        private readonly int[] _sorted = new int[Width];
        private int _filled;
        private int _next;

        // Running mean distance from the median, times Smoothing.
        private int _distance;

        /// <param name="floor">Distance from the median that is never wild, in units of the channel.</param>
        public SpikeFilter(int floor)
        {
            _floor = floor;
        }

        public void Clear()
        {
            _filled = 0;
            _next = 0;
        }

        /// <summary>Takes a reading and gives the one from two readings ago, or Missing where that was wild, a hole, or not yet there.</summary>
        public int Pass(int value)
        {
            _window[_next] = value;
            _next = (_next + 1) % Width;
            if (_filled < Width)
            {
                _filled++;
            }

            if (_filled <= Middle)
            {
                return SampleSet.Missing;
            }

            int candidate = _window[(_next - 1 - Middle + (2 * Width)) % Width];
            if (candidate == SampleSet.Missing)
            {
                return SampleSet.Missing;
            }

            // A wild reading widens the limit no more than a large sound one: noise that begins suddenly is followed all the same.
            int distance = IntegerMath.Abs(candidate - Median());
            int allowed = _floor + (DeviationsAllowed * _distance / Smoothing);
            _distance += IntegerMath.Min(distance, allowed) - (_distance / Smoothing);
            return distance > allowed ? SampleSet.Missing : candidate;
        }

        private int Median()
        {
            int n = 0;
            for (int i = 0; i < _filled; i++)
            {
                int value = _window[i];
                if (value == SampleSet.Missing)
                {
                    continue;
                }

                int at = n++;
                while (at > 0 && _sorted[at - 1] > value)
                {
                    _sorted[at] = _sorted[at - 1];
                    at--;
                }

                _sorted[at] = value;
            }

            return n % 2 == 1 ? _sorted[n / 2] : (_sorted[(n / 2) - 1] + _sorted[n / 2]) / 2;
        }
    }
}
