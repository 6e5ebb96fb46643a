using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>
    /// Writes every sample set to the log as it was read, in blocks, and a dropout where time passed without one. While one block fills,
    /// the one before is encoded in slices, so that no set takes long; it is in the log half a block later.
    /// </summary>
    public sealed class SampleRecorder
    {
        // An unevenly sampled recording has a hole where it is silent for longer than its slowest allowed rate, ten rows a second, twice over.
        private const long UnevenGapMicroseconds = 250000;

        private readonly RecordLog _log;
        private readonly DropoutRecord _dropout = new DropoutRecord();
        private readonly uint _interval;
        private SampleBlock _filling = new SampleBlock();
        private SampleBlock _closing = new SampleBlock();
        private bool _isDropoutOpen;
        private long _last = -1;

        public SampleRecorder(RecordLog log, uint intervalMicroseconds)
        {
            _log = log;
            _interval = intervalMicroseconds;
            _filling.Begin(_interval);
            _closing.Begin(_interval);
        }

        public uint SampleSets { get; private set; }

        /// <summary>True when time was lost before this set.</summary>
        public bool Add(SampleSet sample)
        {
            long passed = sample.Microseconds - _last;
            bool gap = _last >= 0 && (_interval == 0 ? passed > UnevenGapMicroseconds : passed > _interval);
            if (gap)
            {
                BeginClosing();
                _isDropoutOpen = true;
                _dropout.FromMicroseconds = _last;
                _dropout.ToMicroseconds = sample.Microseconds;
                _dropout.Reason = _interval == 0 ? DropoutReason.SourceGap : DropoutReason.Overrun;
            }

            if (!_filling.TryAdd(sample))
            {
                BeginClosing();
                _filling.TryAdd(sample);
            }

            if (_closing.Count > 0 && _closing.EncodeSlice())
            {
                AppendClosed();
            }

            _last = sample.Microseconds;
            SampleSets++;
            return gap;
        }

        /// <summary>Writes everything that is not yet in the log.</summary>
        public void Close()
        {
            BeginClosing();
            AppendClosed();
        }

        // Where gap follows gap, the rest of the block before is encoded at once: the records keep their order.
        private void BeginClosing()
        {
            AppendClosed();
            SampleBlock filled = _filling;
            _filling = _closing;
            _closing = filled;
        }

        private void AppendClosed()
        {
            if (_closing.Count == 0)
            {
                return;
            }

            _log.Append(_closing);
            _closing.Begin(_interval);
            if (_isDropoutOpen)
            {
                _log.Append(_dropout);
                _isDropoutOpen = false;
            }
        }
    }
}
