using LoggerBox.Capture.Board;
using LoggerBox.Capture.Engagements;
using LoggerBox.Capture.Guards;
using LoggerBox.Capture.Holds;
using LoggerBox.Capture.RunUps;
using LoggerBox.Capture.Samples;
using LoggerBox.Capture.Session;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture
{
    /// <summary>
    /// The whole logger between two looks at the clock: read the board, store what was read, find holds, engagements and run-ups in it,
    /// guard the stall, tell the person in the seat. Nothing here waits, and nothing is allocated after construction.
    /// </summary>
    public sealed class CaptureEngine
    {
        // A pause longer than this says nothing of what was before it.
        private const long ForgetMicroseconds = 1000000;

        // Gear tags come up to a second late: that much of a hold may already be the other gear's.
        private const int TagLateBins = 10;
        private const int MarkLateBins = 2;

        // Three seconds of standing still: the operator may let go. After one it is worth to say which step it looks like.
        private const int BinsUntilCaptured = 15;
        private const int BinsASecond = 5;

        private readonly IBoard _board;
        private readonly RecordLog _log;
        private readonly PlanRecord _plan;
        private readonly SessionHeader _header;
        private readonly SampleSet _sample = new SampleSet();
        private readonly LiveReadings _live = new LiveReadings();
        private readonly SampleRecorder _recorder;
        private readonly CleanSamples _clean;
        private readonly BinAverager _bins = new BinAverager();
        private readonly FineTrace _speed = new FineTrace();
        private readonly QuickSpeed _quick = new QuickSpeed();
        private readonly HoldFinder _holds;
        private readonly SessionHolds _session;
        private readonly EngagementWatch _engagements;
        private readonly RunGuards _guards;
        private readonly LoopWatch _loops;
        private readonly Tags _tags;
        private readonly CueGiver _cues;
        private readonly EndedHolds _ended;
        private readonly DueWork _due;
        private readonly SpareTime _spare;
        private readonly SessionEnd _end = new SessionEnd();
        private long _last = long.MaxValue;
        private int _binsOpen;
        private int _holdSpeed;
        private bool _hasBegun;
        private bool _hasBin;

        public CaptureEngine(IBoard board, RecordLog log, PlanRecord plan, SessionHeader header)
        {
            _board = board;
            _log = log;
            _plan = plan;
            _header = header;
            _recorder = new SampleRecorder(log, header.SampleIntervalMicroseconds);
            _clean = new CleanSamples(header);
            _holds = new HoldFinder(header);
            _session = new SessionHolds(plan, header);
            _engagements = new EngagementWatch(header);
            _loops = new LoopWatch(_clean);
            _tags = new Tags(board, log);
            _cues = new CueGiver(board, _tags, _live);
            _guards = new RunGuards(plan, header, _tags, _cues);
            _ended = new EndedHolds(_holds, _session, log, _tags, _cues, _live);
            _due = new DueWork(_ended, _holds, new RunUpTimer(_speed), _engagements, log, _cues);
            _spare = new SpareTime(_recorder, _due, header.SampleIntervalMicroseconds);
        }

        /// <summary>What is to be seen of the running session; the same object always, and up to date when it is sent.</summary>
        public LiveReadings Live => _live.Refreshed();

        /// <summary>Newest speed of a tenth of a second, tenths of rpm, or <see cref="SampleSet.Missing"/>.</summary>
        public int SpeedTenths { get; private set; } = SampleSet.Missing;

        /// <summary>How far the newest reading of the speed may be off (95 %), hundredths of its unit; 0 where the board cannot tell.</summary>
        public int SpeedUncertaintyHundredths => _sample.SpeedUncertaintyHundredths;

        /// <summary>The clock of a run above idle in gear, milliseconds; -1 where there is none.</summary>
        public int RunMilliseconds => _guards.Stall.RunningMilliseconds;

        /// <summary>Steps of a whole test that were not captured yet.</summary>
        public int StepsMissing => _session.StepsMissing;

        /// <summary>A hold has ended that <see cref="StepsMissing"/> does not know of yet.</summary>
        public bool IsNaming => _ended.IsWaiting;

        /// <summary>Writes an event that the board knows of; it takes effect on nothing else.</summary>
        public void Note(EventKind kind, int value, long now) => _tags.Write(now, kind, value);

        /// <summary>Gives a cue that the board knows of, and writes it.</summary>
        public void Tell(Cue cue, long now) => _cues.Give(cue, now);

        /// <summary>Stores what was read so far, while there is still power for it.</summary>
        public void StoreNow() => _recorder.Close();

        /// <summary>One sample set: to be called at the header's interval; late calls become dropouts.</summary>
        public void Step(long now)
        {
            if (!_hasBegun)
            {
                Begin(now);
            }

            bool hadBin = _hasBin;
            if (hadBin)
            {
                FollowBin();
            }

            _sample.Microseconds = now;
            _board.Read(_sample);
            _quick.Add(_sample.QuickSpeed);
            _tags.Read(now);
            _recorder.Add(_sample);
            if (now - _last > ForgetMicroseconds)
            {
                BridgeGap(now);
                _spare.MayBeDue = true;
            }

            if (_tags.HasChanged)
            {
                FollowTags(now);
                _spare.MayBeDue = true;
            }

            _last = now;
            bool hasBin = _clean.Add(_sample) && FollowReadings(_clean.Latest, now);
            _spare.Use(hadBin, hasBin, _sample.IsSpeedNew, now);
        }

        private void Show(long now)
        {
            _live.Follow(_sample);
            _live.Gear = _tags.Gear;
            _live.StallMillisecondsLeft = _guards.Stall.StallLeft(now);
            _live.CooldownMillisecondsLeft = _guards.Stall.CooldownLeft(now);
            _live.StepsCaptured = _session.StepsCaptured;
        }

        /// <summary>Closes the session: what is still open is measured and written.</summary>
        public void End(SessionEndReason reason, long now)
        {
            if (_hasBin)
            {
                FollowBin();
            }

            _due.Finish(now);
            BreakHold(0, _tags.Gear, _tags.Mark, now);
            _engagements.Tag(Gear.Unknown, now);
            _due.Finish(now);
            _recorder.Close();
            _end.Microseconds = now;
            _end.Reason = reason;
            _end.SampleSets = _recorder.SampleSets;
            _end.StepsCaptured = _session.StepsCaptured;
            _log.EndSession(_end);
            Show(now);
            _live.Sampling = false;
            _live.StallMillisecondsLeft = LiveReadings.NoLimit;
        }

        /// <summary>Begins the session, if it is not to begin with the first step: that takes as long as some steps.</summary>
        public void Begin(long now)
        {
            _hasBegun = true;
            _header.StartMicroseconds = now;
            _log.BeginSession(_header);
            _log.Append(_plan);
        }

        private void BridgeGap(long now)
        {
            BreakHold(0, _tags.Gear, _tags.Mark, now);
            _clean.Clear();
            _bins.Clear();
            _speed.Clear();
            _holds.Forget();
            _engagements.Forget();
        }

        // A hold that was open belongs to the tags before the change.
        private void FollowTags(long now)
        {
            if (_tags.GearChanged || _tags.MarkChanged)
            {
                int untrusted = _tags.GearChanged && !_tags.MarkChanged ? TagLateBins : MarkLateBins;
                BreakHold(untrusted, _tags.GearBefore, _tags.MarkBefore, now);
            }

            if (_tags.GearChanged)
            {
                _engagements.Tag(_tags.Gear, now);
                _live.Gear = _tags.Gear;
            }
        }

        // True when a bin was completed.
        private bool FollowReadings(SampleSet clean, long time)
        {
            _speed.Add(clean.Microseconds, clean.Values[Channel.Speed]);
            _engagements.AddSample(clean);
            if (!_bins.Add(clean))
            {
                return false;
            }

            long now = clean.Microseconds;
            Bin bin = _bins.Completed;
            SpeedTenths = bin.Means[Channel.Speed] == Bin.NoMean ? SampleSet.Missing : bin.Means[Channel.Speed] / 100;
            _engagements.Add(bin);
            _guards.Watch(bin, SpeedTenths, _quick.Take(SpeedTenths), now);
            _hasBin = true;
            if (_loops.Look())
            {
                _tags.Write(now, EventKind.LoopState, _loops.Changed);
                _cues.Give(_loops.IsFault ? Cue.LoopFault : Cue.None, now);
            }

            Show(time);
            return true;
        }

        // A bin goes to the guards at once, and to the holds with the set after it, before anything of that: one step would have too much to do.
        private void FollowBin()
        {
            _hasBin = false;
            _spare.MayBeDue = true;
            FollowHold(_bins.Completed, _last);
            FollowStep();
        }

        private void FollowHold(Bin bin, long now)
        {
            bool wasOpen = _holds.IsOpen;
            if (_holds.Add(bin, _sample.SpeedBiasHundredths))
            {
                _ended.Begin(_tags.Gear, _tags.Mark);
            }

            if (_holds.JustOpened)
            {
                _binsOpen = 0;
                _due.TimeRunUp((int)(_holds.LatestHundredths(Channel.Speed) / 100), _tags.Gear);
            }
            else if (wasOpen && !_holds.IsOpen)
            {
                _guards.Left(_binsOpen, BinsUntilCaptured, _holdSpeed, now);
            }

            bool hasSpeed = _holds.IsOpen && _holds.HasLatest(Channel.Speed);
            _holdSpeed = hasSpeed ? (int)(_holds.LatestHundredths(Channel.Speed) / 100) : _holds.IsOpen ? SampleSet.Missing : _holdSpeed;
            if (_holds.IsOpen && !_holds.JustOpened && ++_binsOpen == BinsUntilCaptured)
            {
                bool hasMain = _holds.HasLatest(Channel.Main);
                _guards.Captured(_holdSpeed, hasMain, hasMain ? (int)(_holds.LatestHundredths(Channel.Main) / 100) : 0, now);
            }
        }

        private void FollowStep()
        {
            if (!_holds.IsOpen)
            {
                _live.Step = _tags.Mark;
            }
            else if (_binsOpen == BinsASecond || _binsOpen == BinsUntilCaptured)
            {
                _ended.Look(_binsOpen / BinsASecond);
            }
        }

        private void BreakHold(int untrusted, Gear gear, Step mark, long now)
        {
            if (untrusted == 0)
            {
                _ended.Finish(now);
            }

            if (_holds.Break(untrusted))
            {
                _ended.Begin(gear, mark);
            }
        }
    }
}
