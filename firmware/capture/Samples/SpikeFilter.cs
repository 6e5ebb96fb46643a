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

        // A wild reading lies five and a half standard deviations of Gaussian noise off, and more: that stays nearly whole. Its readings lie 0.56 of
        // one from the median of three around them in the mean (expected values of order statistics: 0.846 from the middle one to either other).
        private const int Smoothing = 4;
        private const int DistancesAllowed = 10;

        private readonly int _floor;
        private readonly int[] _sorted = new int[Width];

        // The last four readings, oldest first.
        private int _first;
        private int _second;
        private int _third;
        private int _fourth;

        // Readings until the window has no hole.
        private int _untilWhole;

        // Running mean distance from the median of three, times Smoothing.
        private int _distance;

        /// <param name="floor">Distance from the median that is never wild, in units of the channel.</param>
        public SpikeFilter(int floor)
        {
            _floor = floor;
            Clear();
        }

        // So far from the median a reading may be.
        private int Allowed => _floor + (_distance * DistancesAllowed / Smoothing);

        public void Clear()
        {
            _first = _second = _third = _fourth = SampleSet.Missing;
            _untilWhole = Width - 1;
        }

        /// <summary>Takes a reading and gives the one from two readings ago, or Missing where that was wild, a hole, or not yet there.</summary>
        public int Pass(int value)
        {
            int b = _second;
            int c = _third;
            int d = _fourth;
            if (value == SampleSet.Missing || _untilWhole > 0)
            {
                return PassWithHole(b, c, d, value);
            }

            // The median of five lies within any three of them: what is near both its neighbours is not far from it.
            int floor = _floor;
            int up = c - b;
            int down = c - d;
            if (up > floor || up < -floor || down > floor || down < -floor)
            {
                return Look(b, c, d, value);
            }

            _first = b;
            _second = c;
            _third = d;
            _fourth = value;
            return c;
        }

        /// <summary>Learns from the newest readings how noisy they are; to be called with some of them, every tenth say.</summary>
        public void Learn()
        {
            if (_untilWhole > 0)
            {
                return;
            }

            // The middle one of three against both others: 0 where it lies between them.
            int up = _third - _second;
            int down = _third - _fourth;
            int distance = up > 0 && down > 0 ? IntegerMath.Min(up, down) : up < 0 && down < 0 ? -IntegerMath.Max(up, down) : 0;
            int usual = _distance;

            // A wild reading widens the limit no more than a large sound one: noise that begins suddenly is followed all the same.
            if (distance > _floor && distance > Allowed)
            {
                distance = Allowed;
            }

            _distance = usual + distance - (usual / Smoothing);
        }

        private int Look(int b, int c, int d, int e)
        {
            int a = _first;
            Shift(b, c, d, e);

            // The median of five is the median of three: of the middle one, the larger of the lower and the smaller of the upper ones of two pairs.
            int low = IntegerMath.Max(IntegerMath.Min(a, b), IntegerMath.Min(d, e));
            int high = IntegerMath.Min(IntegerMath.Max(a, b), IntegerMath.Max(d, e));
            int least = IntegerMath.Min(low, high);
            int most = IntegerMath.Max(low, high);
            int distance = c > most ? c - most : c < least ? least - c : 0;
            return distance > Allowed ? SampleSet.Missing : c;
        }

        private int PassWithHole(int b, int c, int d, int e)
        {
            int a = _first;
            Shift(b, c, d, e);
            _untilWhole = e == SampleSet.Missing ? Width - 1 : _untilWhole - 1;
            return c == SampleSet.Missing || IntegerMath.Abs(c - MedianOfPresent(a, b, c, d, e)) > Allowed ? SampleSet.Missing : c;
        }

        private void Shift(int b, int c, int d, int e)
        {
            _first = b;
            _second = c;
            _third = d;
            _fourth = e;
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
