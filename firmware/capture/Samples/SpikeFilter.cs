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

        // Of the mean distance from the median of five, which is about half a standard deviation: Gaussian noise stays nearly whole.
        private const int DeviationsAllowed = 8;
        private const int Smoothing = 32;

        private readonly int _floor;
        private readonly int[] _sorted = new int[Width];

        // The last four readings, oldest first.
        private int _first;
        private int _second;
        private int _third;
        private int _fourth;

        // Readings until the window has no hole.
        private int _untilWhole;

        // Running mean distance from the median, times Smoothing.
        private int _distance;

        /// <param name="floor">Distance from the median that is never wild, in units of the channel.</param>
        public SpikeFilter(int floor)
        {
            _floor = floor;
            Clear();
        }

        public void Clear()
        {
            _first = _second = _third = _fourth = SampleSet.Missing;
            _untilWhole = Width - 1;
        }

        /// <summary>Takes a reading and gives the one from two readings ago, or Missing where that was wild, a hole, or not yet there.</summary>
        public int Pass(int value)
        {
            int a = _first;
            int b = _second;
            int c = _third;
            int d = _fourth;
            _first = b;
            _second = c;
            _third = d;
            _fourth = value;
            if (value == SampleSet.Missing || _untilWhole > 0)
            {
                return PassWithHole(a, b, c, d, value);
            }

            // The median of five is the median of three: of the middle one, the larger of the lower and the smaller of the upper ones of two pairs.
            int e = value;
            int t;
            if (a > b)
            {
                t = a;
                a = b;
                b = t;
            }

            if (d > e)
            {
                t = d;
                d = e;
                e = t;
            }

            int low = a > d ? a : d;
            int high = b < e ? b : e;
            if (low > high)
            {
                t = low;
                low = high;
                high = t;
            }

            int distance = c > high ? c - high : c < low ? low - c : 0;
            int usual = _distance;
            if (distance > _floor && distance > _floor + (usual / (Smoothing / DeviationsAllowed)))
            {
                return Refuse();
            }

            _distance = usual + distance - (usual / Smoothing);
            return c;
        }

        private int PassWithHole(int a, int b, int c, int d, int e)
        {
            _untilWhole = e == SampleSet.Missing ? Width - 1 : _untilWhole - 1;
            if (c == SampleSet.Missing)
            {
                return c;
            }

            int distance = IntegerMath.Abs(c - MedianOfPresent(a, b, c, d, e));
            if (distance > _floor + (_distance / (Smoothing / DeviationsAllowed)))
            {
                return Refuse();
            }

            _distance += distance - (_distance / Smoothing);
            return c;
        }

        // A wild reading widens the limit no more than a large sound one: noise that begins suddenly is followed all the same.
        private int Refuse()
        {
            _distance += _floor + (_distance / (Smoothing / DeviationsAllowed)) - (_distance / Smoothing);
            return SampleSet.Missing;
        }

        private int MedianOfPresent(int a, int b, int c, int d, int e)
        {
            int n = Insert(a, 0);
            n = Insert(b, n);
            n = Insert(c, n);
            n = Insert(d, n);
            n = Insert(e, n);
            return n % 2 == 1 ? _sorted[n / 2] : (_sorted[(n / 2) - 1] + _sorted[n / 2]) / 2;
        }

        private int Insert(int value, int count)
        {
            if (value == SampleSet.Missing)
            {
                return count;
            }

            int at = count;
            while (at > 0 && _sorted[at - 1] > value)
            {
                _sorted[at] = _sorted[at - 1];
                at--;
            }

            _sorted[at] = value;
            return count + 1;
        }
    }
}
