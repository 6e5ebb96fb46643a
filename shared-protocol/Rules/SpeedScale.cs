using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Rules
{
    /// <summary>
    /// The truck's expected speeds, in the scale of what was recorded: where idle and governed speed are both off by the same large
    /// ratio, it is the pickup's pulses per revolution that are wrong, and the steps can be told apart all the same.
    /// </summary>
    internal sealed class SpeedScale
    {
        // Where the plan says nothing: the usual idle and governed speeds of such engines (common practice, no source).
        private const int UsualIdleTenths = 7500;
        private const int UsualGovernedTenths = 24500;
        private const int StoppedTenths = 600;

        // Half as long again as the stop tone of a plan that says nothing.
        private const int UsualLongestMilliseconds = 15000;

        private PlanRecord _plan;
        private int _perMille;
        private int _lowest;
        private int _highest;

        public SpeedScale(PlanRecord plan)
        {
            _plan = plan;
        }

        /// <summary>Highest speed out of gear.</summary>
        public int TopInNeutral { get; private set; }

        /// <summary>The engine ran clearly faster than this in some gear.</summary>
        public bool WasFaster(int speed) => _highest * 100L > speed * 103L;

        public void Begin(PlanRecord plan)
        {
            _plan = plan;
            _perMille = 1000;
            _lowest = int.MaxValue;
            _highest = 0;
            TopInNeutral = 0;
        }

        public void Take(HoldRecord hold)
        {
            int speed = Speed(hold);
            if (speed > TopInNeutral && !StepNaming.InGear(hold))
            {
                TopInNeutral = speed;
            }

            if (speed >= StoppedTenths)
            {
                _lowest = speed < _lowest ? speed : _lowest;
                _highest = speed > _highest ? speed : _highest;
            }
        }

        /// <summary>All holds were taken.</summary>
        public void Settle()
        {
            if (_highest == 0)
            {
                return;
            }

            int atIdle = (int)(_lowest * 1000L / PlannedIdle());
            int atGoverned = (int)(_highest * 1000L / PlannedGoverned());
            int between = atIdle > atGoverned ? atIdle - atGoverned : atGoverned - atIdle;
            bool agree = between * 100 < atGoverned * 18;
            if (agree && IsFarOff(atIdle) && IsFarOff(atGoverned))
            {
                // Governed speeds are set to a few per cent, idle speeds are not.
                _perMille = atGoverned;
            }
        }

        /// <summary>Highest idle: a quarter above the plan's.</summary>
        public int IdleBelow => Scaled((_plan.IdleMaxTenths > 0 ? _plan.IdleMaxTenths : UsualIdleTenths * 11 / 10) * 5 / 4);

        public int Hold => Scaled(PlannedHold());

        /// <summary>
        /// Distance from the hold speed, true or shown: with a wrong pickup scale a person who holds by the logger's display is at one,
        /// who holds by the truck's own at the other.
        /// </summary>
        public int FromHold(int speed)
        {
            int fromTrue = Distance(speed, Hold);
            int fromShown = Distance(speed, PlannedHold());
            return fromTrue < fromShown ? fromTrue : fromShown;
        }

        public int HoldWindow => Scaled(_plan.HoldWindowTenths > 0 ? _plan.HoldWindowTenths : 750);

        public int Governed => Scaled(PlannedGoverned());

        /// <summary>Expected stall speed; 0 where the plan gives none.</summary>
        public int Stall(Gear gear)
        {
            int planned = gear == Gear.Reverse && _plan.StallReverseTenths > 0 ? _plan.StallReverseTenths : _plan.StallForwardTenths;
            return Scaled(planned);
        }

        /// <summary>As long as the plan lets a stall last; nobody who was told to stop stays on the pedal for longer than this.</summary>
        public int LongestFullPedalMilliseconds => _plan.StallStopMilliseconds > UsualLongestMilliseconds ? _plan.StallStopMilliseconds : UsualLongestMilliseconds;

        // Beyond what a badly set idle screw or governor does.
        private static bool IsFarOff(int perMille) => perMille < 820 || perMille > 1180;

        public static bool IsStopped(HoldRecord hold) =>
            hold.Readings[Channel.Speed].Present && Speed(hold) < StoppedTenths;

        public static int Speed(HoldRecord hold) =>
            hold.Readings[Channel.Speed].Present ? hold.Readings[Channel.Speed].SettledHundredths / 100 : 0;

        private int PlannedHold() => _plan.HoldTenths > 0 ? _plan.HoldTenths : 20000;

        private static int Distance(int a, int b) => a > b ? a - b : b - a;

        private int PlannedIdle() => _plan.IdleMinTenths > 0 && _plan.IdleMaxTenths > 0
            ? (_plan.IdleMinTenths + _plan.IdleMaxTenths) / 2
            : UsualIdleTenths;

        private int PlannedGoverned() => _plan.GovernedTenths > 0 ? _plan.GovernedTenths : UsualGovernedTenths;

        private int Scaled(int tenths) => (int)((long)tenths * _perMille / 1000);
    }
}
