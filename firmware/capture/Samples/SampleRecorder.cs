using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>
    /// Writes every sample set to the log as it was read, in blocks, and a dropout where time passed without one. A block is encoded
    /// while it fills and is in the log with its last set: a cut at any moment costs at most the sets of the block that was filling.
    /// </summary>
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
            bool gap = IsGap(sample.Microseconds - _last);
            if (gap)
            {
                Close();
                _dropout.FromMicroseconds = _last;
                _dropout.ToMicroseconds = sample.Microseconds;
                _dropout.Reason = _interval == 0 ? DropoutReason.SourceGap : DropoutReason.Overrun;
                _log.Append(_dropout);
            }

            // A set may be too far from the first of its block for the block's times.
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

        /// <summary>Writes everything that is not yet in the log.</summary>
        public void Close()
        {
            if (_block.Count > 0)
            {
                _log.Append(_block);
                _block.Begin(_interval);
            }
        }

        private bool IsGap(long passed) => _last >= 0 && passed > (_interval == 0 ? UnevenGapMicroseconds : _interval);
    }
}
