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

        // One of a bin's readings stands for all where they are calm. It is held against its two neighbours: from the median of three a reading of Gaussian
        // noise lies 0.564 standard deviations off in the mean, from that of five 0.663 (expected values of order statistics).
        private const int CalmSmoothing = 4;
        private const int FiveOfThree = 7;
        private const int ThreeOfFive = 6;

        private readonly int _floor;
        private readonly int[] _sorted = new int[Width];

        // The last four readings, oldest first.
        private int _first;
        private int _second;
        private int _third;
        private int _fourth;

        // Running mean distance from the median, times Smoothing.
        private int _distance;

        /// <param name="floor">Distance from the median that is never wild, in units of the channel.</param>
        public SpikeFilter(int floor)
        {
            _floor = floor;
            Clear();
        }

        public void Clear() => _first = _second = _third = _fourth = SampleSet.Missing;

        /// <summary>Takes a reading and gives the one from two readings ago, or Missing where that was wild, a hole, or not yet there.</summary>
        public int Pass(int value)
        {
            int b = _second;
            int middle = _third;
            int d = _fourth;

            // The median of any of them lies no farther away than these two: what is near both its neighbours is not wild. A hole is near a hole alone.
            int floor = _floor;
            int up = middle - b;
            int down = middle - d;
            int passed = middle;
            if (up > floor || up < -floor || down > floor || down < -floor)
            {
                passed = Judge(_first, b, middle, d, value);
            }

            _first = b;
            _second = middle;
            _third = d;
            _fourth = value;
            return passed;
        }

        /// <summary>Learns how noisy calm readings are: to be called once a bin. Those that are not calm are all learned from.</summary>
        public void Learn()
        {
            int up = _third - _second;
            int down = _third - _fourth;
            int floor = _floor;
            if (_third == SampleSet.Missing || up > floor || up < -floor || down > floor || down < -floor)
            {
                return;
            }

            int distance = up > 0 && down > 0 ? IntegerMath.Min(up, down) : up < 0 && down < 0 ? -IntegerMath.Max(up, down) : 0;
            _distance += ((distance * FiveOfThree * Smoothing / ThreeOfFive) - _distance) / CalmSmoothing;
        }

        private int Judge(int a, int b, int c, int d, int e)
        {
            if (c == SampleSet.Missing)
            {
                return c;
            }

            bool isWhole = a != SampleSet.Missing && b != SampleSet.Missing && d != SampleSet.Missing && e != SampleSet.Missing;
            int distance = isWhole ? FromMedian(a, b, c, d, e) : IntegerMath.Abs(c - MedianOfPresent(a, b, c, d, e));
            int allowed = _floor + (_distance * DeviationsAllowed / Smoothing);

            // A wild reading widens the limit no more than a large sound one: noise that begins suddenly is followed all the same.
            _distance += IntegerMath.Min(distance, allowed) - (_distance / Smoothing);
            return distance > allowed ? SampleSet.Missing : c;
        }

        // The median of five is the median of three: of the middle one, the larger of the lower and the smaller of the upper ones of two pairs.
        private static int FromMedian(int a, int b, int c, int d, int e)
        {
            int low = IntegerMath.Max(IntegerMath.Min(a, b), IntegerMath.Min(d, e));
            int high = IntegerMath.Min(IntegerMath.Max(a, b), IntegerMath.Max(d, e));
            int least = IntegerMath.Min(low, high);
            int most = IntegerMath.Max(low, high);
            return c > most ? c - most : c < least ? least - c : 0;
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
