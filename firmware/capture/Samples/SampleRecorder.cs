using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Encoding;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>
    /// Writes every sample set to the log as it was read, in blocks, and a dropout where time passed without one. A block is encoded
    /// while it fills, and made a record over the few sets that follow: a cut at any moment costs at most <see cref="MostLost"/> sets.
    /// </summary>
    public sealed class SampleRecorder
    {
        // An unevenly sampled recording has a hole where it is silent for longer than its slowest allowed rate, ten rows a second, twice over.
        private const long UnevenGapMicroseconds = 250000;

        /// <summary>Sets that a cut costs at most.</summary>
        public const int MostLost = 127;

        // A block takes up to ten sets to be stored in.
        private const int SetsABlock = 108;

        // About.
        private const int PartsOfBlock = 7;

        private readonly RecordLog _log;
        private readonly DropoutRecord _dropout = new DropoutRecord();
        private readonly uint _interval;
        private readonly long _longest;
        private SampleBlock _block = new SampleBlock();
        private SampleBlock _stored = new SampleBlock();

        // One that ended early, while the one before it was not stored yet, and whether what was lost behind it is to be said.
        private SampleBlock _waiting = new SampleBlock();
        private bool _hasWaiting;
        private bool _gapWaits;
        private uint _sampleSets;
        private long _last = long.MaxValue;

        public SampleRecorder(RecordLog log, uint intervalMicroseconds)
        {
            _log = log;
            _interval = intervalMicroseconds;
            _longest = _interval == 0 ? UnevenGapMicroseconds : _interval;
            _block.Begin(_interval);
        }

        public uint SampleSets => _sampleSets;

        private int Unstored => (IsStoring ? _stored.Count : 0) + (_hasWaiting ? _waiting.Count : 0) + _block.Count;

        /// <summary>There may be something to encode.</summary>
        public bool IsEncoding => _block.MayEncode;

        /// <summary>Sets of the newest block, and how many may still come until all of it is stored.</summary>
        public int Count => _block.Count;

        public int SetsLeft => MostLost - _block.Count;

        /// <summary>With the newest set predictors were tried.</summary>
        public bool HasTried => _block.HasTried;

        /// <summary>Begins to encode the newest block: there will not be time enough later.</summary>
        public void BeginEncoding() => _block.BeginEncoding();

        /// <summary>Encodes so many values of it, at most; returns how many it was the work of.</summary>
        public int Encode(int values) => _block.Encode(values);

        /// <summary>Length of the gap that <see cref="Add"/> found last.</summary>
        public long GapMicroseconds { get; private set; }

        /// <summary>True when time was lost before this set.</summary>
        public bool Add(SampleSet sample)
        {
            bool gap = false;
            if (_interval == 0 || _block.Count == 0 || !_block.TryAdd(sample))
            {
                gap = AddLate(sample);
            }

            if (_block.Count >= SetsABlock)
            {
                Store();
            }

            _last = sample.Microseconds;
            _sampleSets++;
            return gap;
        }

        /// <summary>A full block is being stored.</summary>
        public bool IsStoring;

        /// <summary>Instructions that the next part of that takes at most.</summary>
        public int NextPart => _log.NextPart;

        /// <summary>And cannot wait for a set with less to do.</summary>
        /// <param name="margin">Sets that are to be left.</param>
        public bool IsInHurry(int margin) => _log.PartsLeft + (_hasWaiting ? PartsOfBlock : 0) + margin > MostLost - Unstored;

        /// <summary>Does a part of what a full block takes to be stored, all that is left where no more sets may come; true when there was something.</summary>
        public bool Advance()
        {
            if (!IsStoring)
            {
                return false;
            }

            do
            {
                IsStoring = !_log.Advance();
                if (!IsStoring && _hasWaiting)
                {
                    StoreWaiting();
                }
            }
            while (IsStoring && Unstored > MostLost);
            return true;
        }

        /// <summary>Writes everything that is not yet in the log.</summary>
        public void Close()
        {
            Store();
            Finish();
        }

        private bool AddLate(SampleSet sample)
        {
            bool gap = sample.Microseconds - _last > _longest;
            if (gap)
            {
                TakeGap(sample.Microseconds);
            }

            // A set may be too far from the first of its block for the block's times.
            if (!_block.TryAdd(sample))
            {
                Store();
                _block.TryAdd(sample);
            }

            return gap;
        }

        private void TakeGap(long now)
        {
            Store();
            GapMicroseconds = now - _last;
            _dropout.FromMicroseconds = _last;
            _dropout.ToMicroseconds = now;
            _dropout.Reason = _interval == 0 ? DropoutReason.SourceGap : DropoutReason.Overrun;
            _gapWaits = _hasWaiting;
            if (!_gapWaits)
            {
                _log.Append(_dropout);
            }
        }

        // The sets that follow go into the other block.
        private void Store()
        {
            if (_hasWaiting)
            {
                Finish();
            }

            if (_block.Count == 0)
            {
                return;
            }

            SampleBlock full = _block;
            if (_log.IsInWork)
            {
                // A block or another long record is finished first.
                if (!IsStoring)
                {
                    _stored.Begin(_interval);
                }

                IsStoring = true;
                _block = _waiting;
                _waiting = full;
                _hasWaiting = true;
            }
            else
            {
                _block = _stored;
                _stored = full;
                IsStoring = _log.Begin(full);
            }

            _block.Begin(_interval);
        }

        private void StoreWaiting()
        {
            SampleBlock next = _waiting;
            _waiting = _stored;
            _stored = next;
            _hasWaiting = false;
            IsStoring = _log.Begin(next);
            if (_gapWaits)
            {
                _gapWaits = false;
                _log.Append(_dropout);
            }
        }

        private void Finish()
        {
            while (Advance())
            {
            }
        }
    }
}
