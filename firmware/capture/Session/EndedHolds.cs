using LoggerBox.Capture.Holds;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Session
{
    /// <summary>
    /// Takes each hold that has ended through measuring and naming to the log, a little with each sample set that follows, and names the one that
    /// lasts for whoever watches.
    /// </summary>
    public sealed class EndedHolds
    {
        private readonly HoldFinder _holds;
        private readonly SessionHolds _session;
        private readonly RecordLog _log;
        private readonly Tags _tags;
        private readonly CueGiver _cues;
        private readonly LiveReadings _live;
        private readonly OpenStep _openStep = new OpenStep();
        private Gear _gear;
        private Step _mark;
        private Gear _nextGear;
        private Step _nextMark;
        private bool _hasNext;
        private bool _isNamed;
        private bool _isStoring;
        private Gear _cutGear = Gear.Unknown;
        private bool _isCutToTell;
        private Cue _cue;
        private int _lookSeconds;
        private bool _wholeTestShown;

        public EndedHolds(HoldFinder holds, SessionHolds session, RecordLog log, Tags tags, CueGiver cues, LiveReadings live)
        {
            _holds = holds;
            _session = session;
            _log = log;
            _tags = tags;
            _cues = cues;
            _live = live;
        }

        /// <summary>A hold has ended and has not got its name yet.</summary>
        public bool IsWaiting => _holds.IsMeasuring || _holds.IsMeasured || _session.IsNaming || _isNamed;

        /// <summary>The hold that lasts has a name already.</summary>
        public bool IsRecognised => _live.Step != Step.None;

        /// <summary>A hold has ended that was made in this gear and marked so.</summary>
        public void Begin(Gear gear, Step mark)
        {
            // The one before may be measured and not taken yet: it keeps its own.
            _hasNext = _holds.IsMeasured;
            _nextGear = gear;
            _nextMark = mark;
            if (!_hasNext)
            {
                TakeNext();
            }
        }

        /// <summary>The hold that lasts is to be named as if it ended here.</summary>
        public void Look(int seconds)
        {
            _live.Step = _tags.Mark;
            _lookSeconds = _tags.Mark == Step.None && !_session.IsNaming && !_holds.IsMeasured && !_isNamed ? seconds : 0;
        }

        /// <summary>Does a little of what is due; true when there was something.</summary>
        public bool Advance(long now)
        {
            if (_lookSeconds > 0)
            {
                // Done with a set of its own: no bin comes with the next one.
                if (_holds.IsOpen)
                {
                    _openStep.Recognise(_holds, _session, _lookSeconds, _tags.Gear, _tags.Mark);
                }

                _lookSeconds = 0;
                return true;
            }

            if (_session.IsNaming)
            {
                TakeName();
                return true;
            }

            if (_isStoring)
            {
                _isStoring = !_log.Advance();
                return true;
            }

            if (_isNamed)
            {
                _isNamed = false;
                Store(_session.Named);
                return true;
            }

            if (Tell(now))
            {
                return true;
            }

            if (_holds.IsMeasured)
            {
                _holds.Take();
                _session.Add(_holds.Ended, _gear, _mark);
                if (_hasNext)
                {
                    TakeNext();
                }

                return true;
            }

            return _holds.Advance();
        }

        /// <summary>Does all that is due.</summary>
        public void Finish(long now)
        {
            while (Advance(now))
            {
            }
        }

        private void TakeNext()
        {
            _hasNext = false;
            _gear = _nextGear;
            _mark = _nextMark;
        }

        private void TakeName()
        {
            if (!_session.Advance())
            {
                return;
            }

            if (_session.IsKept)
            {
                _isNamed = true;
            }
            else if (_holds.IsOpen && _tags.Mark == Step.None)
            {
                _live.Step = _session.Named.Step;
            }
        }

        private void Store(HoldRecord hold)
        {
            _isStoring = _log.Begin(hold);
            _cutGear = _session.IsDriveCut(hold) ? hold.Gear : Gear.Unknown;
            if (_session.IsWholeTest && !_wholeTestShown)
            {
                _wholeTestShown = true;
                _cue = Cue.AllCaptured;
            }
        }

        // An event or a cue at a time.
        private bool Tell(long now)
        {
            if (_cutGear != Gear.Unknown)
            {
                _tags.Write(now, EventKind.DriveCut, (int)_cutGear);
                _cutGear = Gear.Unknown;
                _isCutToTell = true;
                return true;
            }

            if (_isCutToTell)
            {
                _isCutToTell = false;
                _cues.Give(Cue.DriveCut, now);
                return true;
            }

            bool any = _cue != Cue.None;
            if (any)
            {
                _cues.Give(_cue, now);
                _cue = Cue.None;
            }

            return any;
        }
    }
}
