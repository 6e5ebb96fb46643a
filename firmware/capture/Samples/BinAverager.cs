using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>
    /// Gathers clean samples into bins. The first sample begins the first bin: what is found does not depend on when the clock was started.
    /// </summary>
    public sealed class BinAverager
    {
        // A tenth of a second of the fastest samples stays far below 2^31.
        private readonly int[] _sums = new int[Channel.Count];
        private readonly int[] _counts = new int[Channel.Count];
        private readonly int[] _highest = new int[Channel.Count];
        private readonly int[] _lowest = new int[Channel.Count];
        private long _origin;
        private long _start;
        private long _end;
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
            long now = clean.Microseconds;
            bool completed = false;
            if (now >= _end || now < _start || !_any)
            {
                completed = _any;
                BeginAnother(now);
            }

            // All four at a time and by hand: this runs with every set.
            int[] values = clean.Values;
            int[] sums = _sums;
            int[] counts = _counts;
            int[] highest = _highest;
            int[] lowest = _lowest;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                int value = values[channel];
                if (value == SampleSet.Missing)
                {
                    continue;
                }

                counts[channel]++;
                sums[channel] += value;
                if (value > highest[channel])
                {
                    highest[channel] = value;
                }

                if (value < lowest[channel])
                {
                    lowest[channel] = value;
                }
            }

            return completed;
        }

        private void BeginAnother(long now)
        {
            if (_any)
            {
                Complete();
            }
            else
            {
                _origin = now;
            }

            Empty();
            _start = now - ((now - _origin) % Bin.Microseconds);
            _end = _start + Bin.Microseconds;
            _any = true;
        }

        private void Complete()
        {
            Completed.StartMicroseconds = _start;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                Completed.Means[channel] = _counts[channel] == 0
                    ? Bin.NoMean
                    : (int)IntegerMath.DivideRounded(_sums[channel] * 100L, _counts[channel]);
                Completed.Highest[channel] = _highest[channel];
                Completed.Lowest[channel] = _lowest[channel];
            }
        }

        private void Empty()
        {
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                _counts[channel] = 0;
                _sums[channel] = 0;
                _highest[channel] = int.MinValue;
                _lowest[channel] = int.MaxValue;
            }
        }
    }
}
