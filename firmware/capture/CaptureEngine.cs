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
    public sealed partial class CaptureEngine
    {
        // A pause longer than this says nothing of what was before it.
        private const long ForgetMicroseconds = 1000000;

        // Gear tags come up to a second late: that much of a hold may already be the other gear's.
        private const int TagLateBins = 10;
        private const int MarkLateBins = 2;

        private const int MostEventWaits = 10;

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
        private readonly FineTrace _clutch = new FineTrace();
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
        private bool _hasBegun;

        // How many sets there were with the last one after lost time.
        private uint _setsUntilLate;

        // Sets that have put off the oldest event's record.
        private int _eventWaited;

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
            _engagements = new EngagementWatch(_clutch, header);
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

        /// <summary>Somebody waits for that: to be called before each step.</summary>
        public void NameSoon() => _spare.Hurry();

        /// <summary>Writes an event that the board knows of; it takes effect on nothing else.</summary>
        public void Note(EventKind kind, int value, long now) => _tags.Write(now, kind, value);

        /// <summary>Gives a cue that the board knows of, and writes it.</summary>
        public void Tell(Cue cue, long now) => _cues.Give(cue, now);

        /// <summary>Stores what was read so far, while there is still power for it.</summary>
        public void StoreNow()
        {
            _tags.StoreAll();
            _recorder.Close();
        }

        /// <summary>One sample set: to be called at the header's interval; late calls become dropouts.</summary>
        public void Step(long now)
        {
            if (!_hasBegun)
            {
                Begin(now);
            }

            _sample.Microseconds = now;
            _board.Read(_sample);
            int spent = 0;
            if (_recorder.Add(_sample))
            {
                // What was tagged meanwhile is read with the next set: this one has enough to do. Where every set comes late there is no such one.
                spent = SpareTime.OfAll;
                TakeGap(now);
                TakeTagsOfLate(now);
            }
            else
            {
                _tags.Read(now);
                if (_tags.HasChanged)
                {
                    spent = SpareTime.OfAll;
                    TakeTags(now);
                }
            }

            spent += _binParts == 0 ? 0 : FollowSoon(now);
            if (_clean.Add(_sample) && FollowReadings(_clean.Latest, now))
            {
                spent += SpareTime.OfCompletedBin;
            }

            if (_sample.IsSpeedNew)
            {
                spent += SpareTime.OfEdge;
                _spare.EdgesOfBin++;
            }

            if (_tags.AnyWaits)
            {
                spent += StoreEvents(spent);
            }

            _spare.Use(spent, now);
        }

        private void Show(long now)
        {
            _live.Follow(_sample);
            _live.Gear = _tags.Gear;
            _live.StallMillisecondsLeft = _guards.Stall.StallLeft(now);
            _live.CooldownMillisecondsLeft = _guards.Stall.CooldownLeft(now);
            _live.StepsCaptured = _session.StepsCaptured;
        }

        /// <summary>Measures, names and writes what is still open: nothing that comes belongs to it.</summary>
        public void Settle(long now)
        {
            FollowAll(_tags.Gear, _tags.Mark, now);
            _due.Finish(now);
            BreakHold(0, _tags.Gear, _tags.Mark, now);
            _engagements.Tag(Gear.Unknown, now);
            _due.Finish(now);
        }

        /// <summary>Closes the session, settled.</summary>
        public void End(SessionEndReason reason, long now)
        {
            Settle(now);
            _tags.StoreAll();
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

        private void TakeGap(long now)
        {
            if (_recorder.GapMicroseconds <= ForgetMicroseconds)
            {
                return;
            }

            // What is still read of engagements and run-ups is read now: the readings go.
            _spare.MayBeDue = true;
            FollowAll(_tags.Gear, _tags.Mark, now);
            _due.Finish(now);
            BreakHold(0, _tags.Gear, _tags.Mark, now);
            _clean.Clear();
            _bins.Clear();
            _speed.Clear();
            _clutch.Clear();
            _holds.Forget();
            _engagements.Forget();
        }

        private void TakeTagsOfLate(long now)
        {
            if (_recorder.SampleSets == _setsUntilLate + 1)
            {
                _tags.Read(now);
                if (_tags.HasChanged)
                {
                    TakeTags(now);
                }
            }

            _setsUntilLate = _recorder.SampleSets;
        }

        private void TakeTags(long now)
        {
            FollowTags(now);
            _tags.HasChanged = false;
            _spare.MayBeDue = true;
        }

        // One at a time, with a set that leaves time for it; all where there is time enough, or no longer.
        private int StoreEvents(int spent)
        {
            if (!_spare.IsFast)
            {
                _tags.StoreAll();
                return SpareTime.OfEvent;
            }

            if (spent > SpareTime.SetTime - SpareTime.OfEvent && _eventWaited < MostEventWaits)
            {
                _eventWaited++;
                return 0;
            }

            _eventWaited = 0;
            _tags.StoreOne();
            return SpareTime.OfEvent;
        }

        // A hold that was open belongs to the tags before the change.
        private void FollowTags(long now)
        {
            if (_tags.GearChanged || _tags.MarkChanged)
            {
                FollowAll(_tags.GearBefore, _tags.MarkBefore, now);
                int untrusted = _tags.GearChanged && !_tags.MarkChanged ? TagLateBins : MarkLateBins;
                BreakHold(untrusted, _tags.GearBefore, _tags.MarkBefore, now);
            }

            if (_tags.GearChanged)
            {
                _engagements.Tag(_tags.Gear, now);
                _live.Gear = _tags.Gear;
            }
        }
    }
}
