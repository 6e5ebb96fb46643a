using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>Writes every sample set to the log as it was read, in blocks, and a dropout where time passed without one.</summary>
    public sealed class SampleRecorder
    {
        // An unevenly sampled recording has a hole where it is silent for longer than its slowest allowed rate, ten rows a second, twice over.
        private const long UnevenGapMicroseconds = 250000;

        private readonly RecordLog _log;
        private readonly SampleBlock _block = new SampleBlock();
        private readonly DropoutRecord _dropout = new DropoutRecord();
        private readonly uint _interval;
        private long _last = -1;

        public SampleRecorder(RecordLog log, uint intervalMicroseconds)
        {
            _log = log;
            _interval = intervalMicroseconds;
            _block.Begin(_interval);
        }

        public uint SampleSets { get; private set; }

        /// <summary>True when time was lost before this set.</summary>
        public bool Add(SampleSet sample)
        {
            long passed = sample.Microseconds - _last;
            bool gap = _last >= 0 && (_interval == 0 ? passed > UnevenGapMicroseconds : passed > _interval);
            if (gap)
            {
                Close();
                _dropout.FromMicroseconds = _last;
                _dropout.ToMicroseconds = sample.Microseconds;
                _dropout.Reason = _interval == 0 ? DropoutReason.SourceGap : DropoutReason.Overrun;
                _log.Append(_dropout);
            }

            if (!_block.TryAdd(sample))
            {
                Close();
                _block.TryAdd(sample);
            }

            if (_block.IsFull)
            {
                Close();
            }

            _last = sample.Microseconds;
            SampleSets++;
            return gap;
        }

        /// <summary>Writes the block as far as it goes.</summary>
        public void Close()
        {
            if (_block.Count > 0)
            {
                _log.Append(_block);
            }

            _block.Begin(_interval);
        }
    }
}
