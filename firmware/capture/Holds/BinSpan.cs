using System;
using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>
    /// The last minute of bins at most, with running sums, so that mean and scatter of any stretch cost the same few steps.
    /// Values are kept as distances from the first one: exact, and small enough for sums of squares.
    /// </summary>
    public sealed class BinSpan
    {
        public const int Capacity = 600;
        private const int DroppedWhenFull = 100;

        private readonly long[] _starts = new long[Capacity];
        private readonly long[] _anchors = new long[Channel.Count];
        private readonly bool[] _anchored = new bool[Channel.Count];
        private readonly long[][] _sums = new long[Channel.Count][];
        private readonly long[][] _squares = new long[Channel.Count][];
        private readonly short[][] _counts = new short[Channel.Count][];

        public BinSpan()
        {
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                _sums[channel] = new long[Capacity + 1];
                _squares[channel] = new long[Capacity + 1];
                _counts[channel] = new short[Capacity + 1];
            }
        }

        public int Count { get; private set; }

        public long StartOf(int index) => _starts[index];

        public void Clear()
        {
            Count = 0;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                _anchored[channel] = false;
            }
        }

        public void Add(Bin bin)
        {
            if (Count == Capacity)
            {
                DropFirst(DroppedWhenFull);
            }

            int at = Count++;
            _starts[at] = bin.StartMicroseconds;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                int mean = bin.Means[channel];
                bool present = mean != Bin.NoMean;
                if (present && !_anchored[channel])
                {
                    _anchored[channel] = true;
                    _anchors[channel] = mean;
                }

                long distance = present ? mean - _anchors[channel] : 0;
                _sums[channel][at + 1] = _sums[channel][at] + distance;
                _squares[channel][at + 1] = _squares[channel][at] + (distance * distance);
                _counts[channel][at + 1] = (short)(_counts[channel][at] + (present ? 1 : 0));
            }
        }

        /// <summary>Forgets the oldest bins.</summary>
        public void DropFirst(int bins)
        {
            int kept = Count - bins;
            Array.Copy(_starts, bins, _starts, 0, kept);
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                long sum = _sums[channel][bins];
                long squares = _squares[channel][bins];
                short count = _counts[channel][bins];
                for (int i = 0; i <= kept; i++)
                {
                    _sums[channel][i] = _sums[channel][i + bins] - sum;
                    _squares[channel][i] = _squares[channel][i + bins] - squares;
                    _counts[channel][i] = (short)(_counts[channel][i + bins] - count);
                }
            }

            Count = kept;
        }

        /// <summary>Readings of the channel in bins from..to (to not included).</summary>
        public int Readings(int channel, int from, int to) => _counts[channel][to] - _counts[channel][from];

        /// <summary>Mean in hundredths; 0 of nothing.</summary>
        public long Mean(int channel, int from, int to)
        {
            int count = Readings(channel, from, to);
            return count == 0 ? 0 : _anchors[channel] + IntegerMath.DivideRounded(_sums[channel][to] - _sums[channel][from], count);
        }

        /// <summary>Sample standard deviation of the bins in hundredths.</summary>
        public long Deviation(int channel, int from, int to) => RunningStatistics.Deviation(
            Readings(channel, from, to), _sums[channel][to] - _sums[channel][from], _squares[channel][to] - _squares[channel][from], 1);
    }
}
