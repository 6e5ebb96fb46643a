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
        private readonly StallLimits _limits;
        private long _began = -1;
        private long _stopped = -1;
        private Cue _given;
        private bool _isStall;
        private bool _cooled = true;

        public StallGuard(PlanRecord plan)
        {
            _limits = new StallLimits(plan);
        }

        /// <summary>The clock of the run above idle in gear that is going on, milliseconds; -1 when there is none.</summary>
        public int RunningMilliseconds { get; private set; } = -1;

        /// <summary>The cue that is due now, each once; None mostly.</summary>
        /// <param name="quickTenths">The speed of this moment, less exactly: enough to see a pedal that goes down.</param>
        public Cue Watch(long now, Gear gear, Step mark, int speedTenths, int quickTenths)
        {
            bool inGear = gear == Gear.Forward || gear == Gear.Reverse;
            bool declaredHold = mark == Step.HoldForward || mark == Step.HoldReverse;
            bool isKnown = speedTenths != SampleSet.Missing;

            // A speed that cannot be told stops no clock, nor does one reading that is wrong: the pedal is up when the bin's mean says so, too. What looks like a
            // stopped engine for longer, a pickup that fell off, ends the run.
            bool running = inGear && (quickTenths == SampleSet.Missing ? _began >= 0
                : quickTenths > _limits.PedalTenths || (_began >= 0 && isKnown && speedTenths > _limits.PedalTenths));
            if (!running)
            {
                RunningMilliseconds = -1;
                return Pause(now);
            }

            if (_began < 0)
            {
                _began = now;
                _given = Cue.None;
                RunningMilliseconds = 0;
                _isStall = !declaredHold;
                return _cooled || declaredHold ? Cue.None : Cue.CoolDown;
            }

            RunningMilliseconds = IntegerMath.Clamp((now - _began) / 1000, 0, int.MaxValue);
            _isStall = !declaredHold;
            if (declaredHold)
            {
                // Nobody holds 2000 rpm for as long as the longest stall there is: then the word is not believed any more.
                return RunningMilliseconds < PlanBounds.LongestStopMilliseconds ? Cue.None : Once(Cue.StallStop);
            }

            return Run(RunningMilliseconds, gear, isKnown ? speedTenths : 0);
        }

        /// <summary>Milliseconds until the pedal must be let go; -1 where nothing runs.</summary>
        public int StallLeft(long now) =>
            _began < 0 ? -1 : Left(now - _began, _isStall ? _limits.StopMilliseconds : PlanBounds.LongestStopMilliseconds);

        /// <summary>Milliseconds until the oil has cooled after a stall; 0 where it has.</summary>
        public int CooldownLeft(long now) => _cooled || _began >= 0 ? 0 : Left(now - _stopped, _limits.CooldownMilliseconds);

        private static int Left(long microseconds, int limit)
        {
            long left = limit - (microseconds / 1000);
            return left < 0 ? 0 : (int)left;
        }

        private Cue Run(int milliseconds, Gear gear, int speed)
        {
            int fastest = gear == Gear.Reverse ? _limits.FastestReverseTenths : _limits.FastestForwardTenths;
            bool atHoldSpeed = speed >= _limits.HoldLowTenths && speed <= _limits.HoldHighTenths;
            Cue due = milliseconds >= _limits.StopMilliseconds ? Cue.StallStop
                : fastest > 0 && speed > fastest && !atHoldSpeed ? Cue.Overspeed
                : milliseconds >= _limits.WarnMilliseconds ? Cue.StallWarn
                : milliseconds >= _limits.TargetMilliseconds ? Cue.StallTarget
                : Cue.None;
            return Once(due);
        }

        private Cue Pause(long now)
        {
            if (_began >= 0)
            {
                bool stalled = _isStall && (now - _began) / 1000 >= _limits.TargetMilliseconds / 2;
                _began = -1;
                _stopped = stalled ? now : _stopped;
                _cooled = !stalled && _cooled;
                return stalled ? Cue.CoolDown : Cue.None;
            }

            if (!_cooled && (now - _stopped) / 1000 >= _limits.CooldownMilliseconds)
            {
                _cooled = true;
                return Cue.CoolDownOver;
            }

            return Cue.None;
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
