using LoggerBox.Capture.Engagements;
using LoggerBox.Capture.Holds;
using LoggerBox.Capture.RunUps;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Session
{
    /// <summary>What readings have left to be done and no reading waits for: holds that ended, run-ups, engagements. One thing at a time, a little of it.</summary>
    public sealed class DueWork
    {
        /// <summary>Instructions that one part takes at most (`DEVELOPERS.md` says how they are measured).</summary>
        public const int LongestPart = 1900;
        private const int UsualPart = 1400;

        // Most of them take less.
        public const int ShortPart = 1400;

        private readonly EndedHolds _ended;
        private readonly HoldFinder _holds;
        private readonly RunUpTimer _runUps;
        private readonly EngagementWatch _engagements;
        private readonly RecordLog _log;
        private readonly CueGiver _cues;
        private bool _isRunUpSought;
        private bool _hasRunUp;
        private Cue _cue;
        private int _reachedTenths;

        public DueWork(EndedHolds ended, HoldFinder holds, RunUpTimer runUps, EngagementWatch engagements, RecordLog log, CueGiver cues)
        {
            _ended = ended;
            _holds = holds;
            _runUps = runUps;
            _engagements = engagements;
            _log = log;
            _cues = cues;
        }

        /// <summary>A hold has opened: if the way to it was a run-up, that is to be timed.</summary>
        public void TimeRunUp(int toTenths, Gear gear)
        {
            _isRunUpSought = true;
            _reachedTenths = toTenths;
            _runUps.Timed.Gear = gear;
        }

        /// <summary>What the next part takes, but for a few: where another part has gone before it there is to be time for the longest.</summary>
        public int NextPart => _holds.IsMeasuring && !_holds.IsMeasured ? ShortPart : LongestPart;

        /// <summary>Does a little, and returns what it took at most; 0 where there was nothing.</summary>
        public int Advance(long now)
        {
            if (_holds.IsMeasuring && !_holds.IsMeasured)
            {
                _holds.Advance();
                return UsualPart;
            }

            if (_ended.Advance(now))
            {
                return LongestPart;
            }

            if (_isRunUpSought)
            {
                _isRunUpSought = false;
                _runUps.Begin(_holds.ApproachStartMicroseconds, _holds.ApproachFromTenths, _holds.ApproachMilliseconds > 0 ? _reachedTenths : 0);
                return ShortPart;
            }

            if (_runUps.IsRunning)
            {
                _hasRunUp = _runUps.Advance() && _runUps.IsTimed;
                return ShortPart;
            }

            if (_hasRunUp)
            {
                _hasRunUp = false;
                _log.Append(_runUps.Timed);
                return LongestPart;
            }

            return AdvanceEngagement(now) ? LongestPart : 0;
        }

        /// <summary>Does a little of what needs no log: measures a hold that has ended.</summary>
        public void Measure()
        {
            if (_holds.IsMeasuring && !_holds.IsMeasured)
            {
                _holds.Advance();
            }
        }

        /// <summary>Does all of it.</summary>
        public void Finish(long now)
        {
            while (Advance(now) > 0)
            {
            }
        }

        // What is whole is written and told in parts of their own.
        private bool AdvanceEngagement(long now)
        {
            if (_cue != Cue.None)
            {
                _cues.Give(_cue, now);
                _cue = Cue.None;
                return true;
            }

            if (_engagements.IsWhole)
            {
                _engagements.Take();
                _log.Append(_engagements.Ended);
                _cue = _engagements.Ended.Disturbed || _engagements.Ended.NeverFilled ? Cue.None : Cue.EngagementCaptured;
                return true;
            }

            return _engagements.Advance();
        }
    }
}
