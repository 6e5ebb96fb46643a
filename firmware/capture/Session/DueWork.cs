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
        private readonly EndedHolds _ended;
        private readonly HoldFinder _holds;
        private readonly RunUpTimer _runUps;
        private readonly EngagementWatch _engagements;
        private readonly RecordLog _log;
        private readonly CueGiver _cues;
        private bool _isRunUpSought;
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

        /// <summary>Does a little; true when there was something.</summary>
        public bool Advance(long now)
        {
            if (_ended.Advance(now))
            {
                return true;
            }

            if (_isRunUpSought)
            {
                _isRunUpSought = false;
                _runUps.Begin(_holds.ApproachStartMicroseconds, _holds.ApproachFromTenths, _holds.ApproachMilliseconds > 0 ? _reachedTenths : 0);
                return true;
            }

            if (_runUps.IsRunning)
            {
                if (_runUps.Advance() && _runUps.IsTimed)
                {
                    _log.Append(_runUps.Timed);
                }

                return true;
            }

            return AdvanceEngagement(now);
        }

        /// <summary>Does all of it.</summary>
        public void Finish(long now)
        {
            while (Advance(now))
            {
            }
        }

        private bool AdvanceEngagement(long now)
        {
            if (!_engagements.Advance())
            {
                return false;
            }

            if (_engagements.IsWhole)
            {
                _engagements.Take();
                _log.Append(_engagements.Ended);
                _cues.Give(_engagements.Ended.Disturbed || _engagements.Ended.NeverFilled ? Cue.None : Cue.EngagementCaptured, now);
            }

            return true;
        }
    }
}
