using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>Reports a loop that fails or comes back, after it has been so for a while: a plug that is pushed in bounces.</summary>
    public sealed class LoopWatch
    {
        private const int BinsToBelieve = 3;

        private readonly CleanSamples _clean;
        private readonly LoopState[] _believed = new LoopState[Channel.Count];
        private readonly LoopState[] _seen = new LoopState[Channel.Count];
        private readonly int[] _since = new int[Channel.Count];

        public LoopWatch(CleanSamples clean)
        {
            _clean = clean;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                _believed[channel] = LoopState.Measuring;
            }
        }

        /// <summary>Channel and state as one event value, of the last true <see cref="Look"/>.</summary>
        public int Changed { get; private set; }

        public bool IsFault { get; private set; }

        /// <summary>Looks once a bin; true when a loop's state has changed for good.</summary>
        public bool Look()
        {
            for (int channel = Channel.Main; channel < Channel.Count; channel++)
            {
                LoopState state = _clean.Loop(channel);
                if (state == _believed[channel])
                {
                    _seen[channel] = state;
                    continue;
                }

                _since[channel] = state == _seen[channel] ? _since[channel] + 1 : 0;
                _seen[channel] = state;
                if (state != LoopState.NoReading && _since[channel] >= BinsToBelieve)
                {
                    _believed[channel] = state;
                    Changed = EventRecord.Pair(channel, (int)state);
                    IsFault = state != LoopState.Measuring;
                    return true;
                }
            }

            return false;
        }
    }
}
