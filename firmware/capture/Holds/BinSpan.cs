using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>
    /// The last minute of bins at most, with running sums, so that mean and scatter of any stretch cost the same few steps.
    /// Values are kept as distances from the first one. The sums run on for ever and may wrap around: their differences stay exact.
    /// </summary>
    public sealed partial class BinSpan
    {
        public const int Capacity = 600;
        private const int DroppedWhenFull = 100;

        /// <summary>So many may still come while a stretch that was kept is looked at.</summary>
        public const int MostAfterKept = 60;

        // The places stand in a ring; a stretch has one more end than it has bins.
        private const int Places = Capacity + MostAfterKept + 1;

        private readonly long[] _starts;
        private readonly long[] _anchors = new long[Channel.Count];
        private readonly bool[] _anchored = new bool[Channel.Count];
        private readonly long[][] _sums;
        private readonly long[][] _squares;
        private readonly short[][] _counts;
        private int _first;
        private int _count;

        // The newest bins that have readings of all channels, one after the other.
        private int _whole;

        public BinSpan()
        {
            _starts = new long[Places];
            _sums = new long[Channel.Count][];
            _squares = new long[Channel.Count][];
            _counts = new short[Channel.Count][];
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                _sums[channel] = new long[Places];
                _squares[channel] = new long[Places];
                _counts[channel] = new short[Places];
            }
        }

        /// <summary>A stretch of another span's bins, to be kept while that one goes on; empty until <see cref="Keep"/>.</summary>
        public BinSpan(BinSpan whole)
        {
            _starts = whole._starts;
            _sums = whole._sums;
            _squares = whole._squares;
            _counts = whole._counts;
        }

        public int Count => _count;

        public long StartOf(int index) => _starts[Place(index)];

        public void Clear()
        {
            _count = 0;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                _anchored[channel] = false;
            }
        }

        public void Add(Bin bin)
        {
            if (_count == Capacity)
            {
                DropFirst(DroppedWhenFull);
            }

            int at = Place(_count);
            int next = at + 1 == Places ? 0 : at + 1;
            _count++;
            _starts[at] = bin.StartMicroseconds;
            int[] means = bin.Means;
            _whole++;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                long[] sums = _sums[channel];
                long[] squares = _squares[channel];
                short[] counts = _counts[channel];
                int mean = means[channel];
                if (mean == Bin.NoMean)
                {
                    sums[next] = sums[at];
                    squares[next] = squares[at];
                    counts[next] = counts[at];
                    _whole = 0;
                    continue;
                }

                if (!_anchored[channel])
                {
                    _anchored[channel] = true;
                    _anchors[channel] = mean;
                }

                long distance = mean - _anchors[channel];
                sums[next] = sums[at] + distance;
                squares[next] = squares[at] + (distance * distance);
                counts[next] = (short)(counts[at] + 1);
            }
        }

        /// <summary>Takes the first bins of the span that this one was made from: they stay until that one has taken <see cref="MostAfterKept"/> more.</summary>
        public void Keep(BinSpan whole, int count)
        {
            _first = whole._first;
            _count = count;
            System.Array.Copy(whole._anchors, _anchors, Channel.Count);
        }

        /// <summary>
        /// Adds the squares of the steps from bin to next bin to <paramref name="squares"/>, from <paramref name="index"/> on as long as both
        /// lie before <paramref name="end"/>, so many at most. Returns how many steps there were; the index is left where it goes on.
        /// </summary>
        public int AddSteps(int channel, ref int index, int end, int stride, int most, ref long squares)
        {
            if (index + 1 >= end)
            {
                return 0;
            }

            int steps = (end - index + stride - 2) / stride;
            steps = steps < most ? steps : most;
            int first = Place(index);
            int last = first + ((steps - 1) * stride) + 2;
            index += steps * stride;
            return last < Places && (short)(_counts[channel][last] - _counts[channel][first]) == last - first
                ? AddWholeSteps(_sums[channel], first, last, stride, ref squares)
                : AddStepsAcross(channel, first, steps, stride, ref squares);
        }

        // As it mostly is: all bins have readings, and stand in a row.
        private static int AddWholeSteps(long[] sums, int first, int last, int stride, ref long squares)
        {
            long added = 0;
            int steps = 0;
            for (int a = first; a < last - 1; a += stride)
            {
                long middle = sums[a + 1];
                long step = sums[a + 2] - middle - (middle - sums[a]);
                added += step * step;
                steps++;
            }

            squares += added;
            return steps;
        }

        private int AddStepsAcross(int channel, int first, int count, int stride, ref long squares)
        {
            long[] sums = _sums[channel];
            short[] counts = _counts[channel];
            long added = 0;
            int steps = 0;
            int a = first;
            for (; count > 0; count--)
            {
                int b = a + 1;
                int c = a + 2;
                if (c >= Places)
                {
                    b = b == Places ? 0 : b;
                    c -= Places;
                }

                if ((short)(counts[c] - counts[a]) == 2)
                {
                    long middle = sums[b];
                    long step = sums[c] - middle - (middle - sums[a]);
                    added += step * step;
                    steps++;
                }

                a += stride;
                if (a >= Places)
                {
                    a -= Places;
                }
            }

            squares += added;
            return steps;
        }

        /// <summary>One bin less the mean; false where it has no reading.</summary>
        public bool TryDistance(int channel, int index, long mean, out long distance)
        {
            int a = Place(index);
            int b = a + 1 == Places ? 0 : a + 1;
            distance = _anchors[channel] + _sums[channel][b] - _sums[channel][a] - mean;
            return _counts[channel][b] != _counts[channel][a];
        }

        /// <summary>Forgets the oldest bins.</summary>
        public void DropFirst(int bins)
        {
            _first = Place(bins);
            _count -= bins;
        }

        /// <summary>Readings of the channel in bins from..to (to not included).</summary>
        public int Readings(int channel, int from, int to)
        {
            short[] counts = _counts[channel];
            return (short)(counts[Place(to)] - counts[Place(from)]);
        }

        /// <summary>Mean in hundredths; 0 of nothing.</summary>
        public long Mean(int channel, int from, int to) => TryMean(channel, from, to, 1, out long mean) ? mean : 0;

        /// <summary>Mean in hundredths; false where there are fewer readings than this. It is asked for with each bin, several times.</summary>
        public bool TryMean(int channel, int from, int to, int fewest, out long mean)
        {
            int a = _first + from;
            if (a >= Places)
            {
                a -= Places;
            }

            int b = _first + to;
            if (b >= Places)
            {
                b -= Places;
            }

            short[] counts = _counts[channel];
            int count = (short)(counts[b] - counts[a]);
            if (count < fewest)
            {
                mean = 0;
                return false;
            }

            // Rounded to the nearest, halves away from zero.
            long[] sums = _sums[channel];
            long sum = sums[b] - sums[a];
            long half = count >> 1;
            mean = _anchors[channel] + ((sum >= 0 ? sum + half : sum - half) / count);
            return true;
        }

        /// <summary>Sample standard deviation of the bins in hundredths.</summary>
        public long Deviation(int channel, int from, int to)
        {
            int a = Place(from);
            int b = Place(to);
            return RunningStatistics.Deviation(
                (short)(_counts[channel][b] - _counts[channel][a]), _sums[channel][b] - _sums[channel][a], _squares[channel][b] - _squares[channel][a], 1);
        }

        /// <summary>Sample variance of the bins, square hundredths.</summary>
        public long Variance(int channel, int from, int to)
        {
            int a = Place(from);
            int b = Place(to);
            long count = (short)(_counts[channel][b] - _counts[channel][a]);
            long sum = _sums[channel][b] - _sums[channel][a];
            return count < 2 ? 0 : ((count * (_squares[channel][b] - _squares[channel][a])) - (sum * sum)) / (count * (count - 1));
        }

        private int Place(int index)
        {
            int place = _first + index;
            return place >= Places ? place - Places : place;
        }
    }
}
