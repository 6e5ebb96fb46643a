using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>
    /// Gathers clean samples into bins. The first sample begins the first bin: what is found does not depend on when the clock was started.
    /// </summary>
    public sealed class BinAverager
    {
        private readonly long[] _sums = new long[Channel.Count];
        private readonly int[] _counts = new int[Channel.Count];
        private readonly int[] _highest = new int[Channel.Count];
        private readonly int[] _lowest = new int[Channel.Count];
        private long _origin;
        private long _start;
        private bool _any;

        /// <summary>The bin that the last <see cref="Add"/> completed.</summary>
        public readonly Bin Completed = new Bin();

        public void Clear()
        {
            _any = false;
            Empty();
        }

        /// <summary>True when this sample began a new bin and <see cref="Completed"/> holds the one before it.</summary>
        public bool Add(SampleSet clean)
        {
            if (!_any)
            {
                _origin = clean.Microseconds;
            }

            long start = clean.Microseconds - ((clean.Microseconds - _origin) % Bin.Microseconds);
            bool completed = _any && start != _start;
            if (completed)
            {
                Complete();
                Empty();
            }

            _start = start;
            _any = true;
            int[] values = clean.Values;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                int value = values[channel];
                if (value != SampleSet.Missing)
                {
                    Take(channel, value);
                }
            }

            return completed;
        }

        private void Take(int channel, int value)
        {
            int count = _counts[channel];
            _counts[channel] = count + 1;
            if (count == 0)
            {
                _sums[channel] = value;
                _highest[channel] = value;
                _lowest[channel] = value;
                return;
            }

            _sums[channel] += value;
            if (value > _highest[channel])
            {
                _highest[channel] = value;
            }
            else if (value < _lowest[channel])
            {
                _lowest[channel] = value;
            }
        }

        private void Complete()
        {
            Completed.StartMicroseconds = _start;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                Completed.Means[channel] = _counts[channel] == 0
                    ? Bin.NoMean
                    : (int)IntegerMath.DivideRounded(_sums[channel] * 100, _counts[channel]);
                Completed.Highest[channel] = _highest[channel];
                Completed.Lowest[channel] = _lowest[channel];
            }
        }

        private void Empty()
        {
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                _counts[channel] = 0;
            }
        }
    }
}
