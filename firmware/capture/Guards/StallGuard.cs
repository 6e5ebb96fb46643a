using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Guards
{
    /// <summary>
    /// Watches a run above idle in gear while it lasts: the clock of the stall, the speed that a sound clutch can't reach, and the pause after it.
    /// A stall heats the converter's oil by some four degrees a second; nobody looks at a watch meanwhile.
    /// </summary>
    public sealed class StallGuard
    {
        private const int AboveIdlePercent = 140;
        private const int UsualIdleTenths = 7500;

        private readonly PlanRecord _plan;
        private long _began = -1;
        private long _stopped = -1;
        private Cue _given;
        private bool _cooled = true;

        public StallGuard(PlanRecord plan)
        {
            _plan = plan;
        }

        /// <summary>The cue that is due now, each once; None mostly.</summary>
        public Cue Watch(long now, Gear gear, Step mark, int speedTenths)
        {
            bool inGear = gear == Gear.Forward || gear == Gear.Reverse;
            bool wheelsClear = mark == Step.HoldForward || mark == Step.HoldReverse;
            int idle = _plan.IdleMaxTenths > 0 ? _plan.IdleMaxTenths : UsualIdleTenths;
            bool running = inGear && !wheelsClear && speedTenths != SampleSet.Missing && speedTenths * 100L > (long)idle * AboveIdlePercent;
            if (!running)
            {
                return Pause(now);
            }

            if (_began < 0)
            {
                _began = now;
                _given = Cue.None;
            }

            return Run(now - _began, gear, speedTenths);
        }

        /// <summary>Milliseconds until the pedal must be let go; -1 where no stall runs, or the plan names no limit.</summary>
        public int StallLeft(long now) =>
            _began < 0 || _plan.StallStopMilliseconds <= 0 ? -1 : Left(now - _began, _plan.StallStopMilliseconds);

        /// <summary>Milliseconds until the oil has cooled after a stall; 0 where it has.</summary>
        public int CooldownLeft(long now) => _cooled || _began >= 0 ? 0 : Left(now - _stopped, _plan.CooldownMilliseconds);

        private static int Left(long microseconds, int limit)
        {
            long left = limit - (microseconds / 1000);
            return left < 0 ? 0 : (int)left;
        }

        private Cue Run(long microseconds, Gear gear, int speed)
        {
            long milliseconds = microseconds / 1000;
            int fastest = Fastest(gear);
            bool atHoldSpeed = IntegerMath.Abs(speed - _plan.HoldTenths) <= 2 * _plan.HoldWindowTenths;
            Cue due = milliseconds >= _plan.StallStopMilliseconds ? Cue.StallStop
                : fastest > 0 && speed > fastest && !atHoldSpeed ? Cue.Overspeed
                : milliseconds >= _plan.StallWarnMilliseconds ? Cue.StallWarn
                : milliseconds >= _plan.StallTargetMilliseconds ? Cue.StallTarget
                : Cue.None;
            return Once(due);
        }

        private Cue Pause(long now)
        {
            if (_began >= 0)
            {
                bool stalled = (now - _began) / 1000 >= _plan.StallTargetMilliseconds / 2;
                _began = -1;
                _stopped = stalled ? now : _stopped;
                _cooled = !stalled && _cooled;
                return stalled ? Cue.CoolDown : Cue.None;
            }

            if (!_cooled && (now - _stopped) / 1000 >= _plan.CooldownMilliseconds)
            {
                _cooled = true;
                return Cue.CoolDownOver;
            }

            return Cue.None;
        }

        private int Fastest(Gear gear)
        {
            int nominal = gear == Gear.Reverse && _plan.StallReverseTenths > 0 ? _plan.StallReverseTenths : _plan.StallForwardTenths;
            int tolerance = gear == Gear.Reverse && _plan.StallReverseTenths > 0
                ? _plan.StallReverseToleranceTenths
                : _plan.StallForwardToleranceTenths;
            return nominal <= 0 ? 0 : nominal + tolerance;
        }

        private Cue Once(Cue due)
        {
            if (due == _given)
            {
                return Cue.None;
            }

            _given = due;
            return due;
        }
    }
}
