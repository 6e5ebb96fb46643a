using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>
    /// Gathers clean samples into bins. The first sample begins the first bin: what is found does not depend on when the clock was started.
    /// </summary>
    public sealed class BinAverager
    {
        private readonly ChannelSum _speed = new ChannelSum();
        private readonly ChannelSum _main = new ChannelSum();
        private readonly ChannelSum _clutch = new ChannelSum();
        private readonly ChannelSum _converter = new ChannelSum();
        private long _origin;
        private long _start;
        private long _end = long.MinValue;
        private int _sets;
        private bool _any;

        /// <summary>The bin that the last <see cref="Add"/> completed.</summary>
        public readonly Bin Completed = new Bin();

        public void Clear()
        {
            _any = false;
            _end = long.MinValue;
        }

        /// <summary>This sample would begin a new bin.</summary>
        public bool IsCompletedBy(SampleSet clean) => _any && clean.Microseconds >= _end;

        /// <summary>True when this sample began a new bin and <see cref="Completed"/> holds the one before it.</summary>
        public bool Add(SampleSet clean)
        {
            bool completed = false;
            if (clean.Microseconds >= _end)
            {
                completed = _any;
                BeginAnother(clean.Microseconds);
            }

            _sets++;
            int[] values = clean.Values;
            _speed.Add(values[Channel.Speed]);
            _main.Add(values[Channel.Main]);
            _clutch.Add(values[Channel.Clutch]);
            _converter.Add(values[Channel.Converter]);
            return completed;
        }

        private void BeginAnother(long now)
        {
            if (_any)
            {
                Completed.StartMicroseconds = _start;
                _speed.Complete(Completed, Channel.Speed, _sets);
                _main.Complete(Completed, Channel.Main, _sets);
                _clutch.Complete(Completed, Channel.Clutch, _sets);
                _converter.Complete(Completed, Channel.Converter, _sets);
            }
            else
            {
                _origin = now;
                _speed.Clear();
                _main.Clear();
                _clutch.Clear();
                _converter.Clear();
            }

            _sets = 0;
            _start = now - ((now - _origin) % Bin.Microseconds);
            _end = _start + Bin.Microseconds;
            _any = true;
        }
    }
}
