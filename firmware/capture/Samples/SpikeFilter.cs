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

        // The window, oldest first.
        private int _first;
        private int _second;
        private int _middle;
        private int _fourth;
        private int _newest;

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
            _first = _second = _middle = _fourth = _newest = SampleSet.Missing;
        }

        /// <summary>Takes a reading and gives the one from two readings ago, or Missing where that was wild, a hole, or not yet there.</summary>
        public int Pass(int value)
        {
            int a = _second;
            int b = _middle;
            int c = _fourth;
            int d = _newest;
            int e = value;
            _first = a;
            _second = b;
            _middle = c;
            _fourth = d;
            _newest = e;

            // Missing is less than any reading.
            if (a == SampleSet.Missing || b == SampleSet.Missing || c == SampleSet.Missing || d == SampleSet.Missing || e == SampleSet.Missing)
            {
                return c == SampleSet.Missing ? c : Judge(c, c - MedianOfPresent());
            }

            // The median of five by six comparisons: the least of four can't be it, and of the other four it is the second.
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

            if (a > d)
            {
                d = a;
                t = b;
                b = e;
                e = t;
            }

            int candidate = c;
            if (b > c)
            {
                t = b;
                b = c;
                c = t;
            }

            return Judge(candidate, candidate - (b < d ? (c < d ? c : d) : (b < e ? b : e)));
        }

        // A wild reading widens the limit no more than a large sound one: noise that begins suddenly is followed all the same.
        private int Judge(int candidate, int distance)
        {
            distance = distance < 0 ? -distance : distance;
            int usual = _distance;
            int allowed = _floor + (usual / (Smoothing / DeviationsAllowed));
            if (distance <= allowed)
            {
                _distance = usual + distance - (usual / Smoothing);
                return candidate;
            }

            _distance = usual + allowed - (usual / Smoothing);
            return SampleSet.Missing;
        }

        private int MedianOfPresent()
        {
            int n = Insert(_first, 0);
            n = Insert(_second, n);
            n = Insert(_middle, n);
            n = Insert(_fourth, n);
            n = Insert(_newest, n);
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
