using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Guards
{
    /// <summary>
    /// The times and speeds that the stall guard goes by: the plan's, brought inside <see cref="PlanBounds"/>, and the cautious defaults
    /// where it gives none. Copied once, so that whatever happens to a plan later, a running guard keeps its limits.
    /// </summary>
    public sealed class StallLimits
    {
        // Common practice, no source: 5 s are enough to read a stall, 10 s are the end, a minute in neutral brings the heat to the cooler.
        private const int UsualTargetMilliseconds = 5000;
        private const int UsualWarnMilliseconds = 8000;
        private const int UsualStopMilliseconds = 10000;
        private const int UsualCooldownMilliseconds = 60000;

        private const int AboveIdlePercent = 140;
        private const int UsualIdleTenths = 7500;

        // Whatever a plan calls idle: in gear above this speed the converter takes power.
        private const int HighestPedalTenths = 13000;

        public readonly int TargetMilliseconds;
        public readonly int WarnMilliseconds;
        public readonly int StopMilliseconds;
        public readonly int CooldownMilliseconds;

        /// <summary>In gear above this speed the pedal is down.</summary>
        public readonly int PedalTenths;

        /// <summary>Highest sound stall speed; 0: not known.</summary>
        public readonly int FastestForwardTenths;
        public readonly int FastestReverseTenths;

        /// <summary>Between these a declared hold may be what is going on; both 0: no hold speed is known.</summary>
        public readonly int HoldLowTenths;
        public readonly int HoldHighTenths;

        public StallLimits(PlanRecord plan)
        {
            StopMilliseconds = Bring(plan.StallStopMilliseconds, UsualStopMilliseconds, PlanBounds.ShortestStopMilliseconds, PlanBounds.LongestStopMilliseconds);
            TargetMilliseconds = IntegerMath.Min(
                Bring(plan.StallTargetMilliseconds, UsualTargetMilliseconds, PlanBounds.ShortestTargetMilliseconds, PlanBounds.LongestTargetMilliseconds), StopMilliseconds);
            WarnMilliseconds = IntegerMath.Clamp(
                plan.StallWarnMilliseconds <= 0 ? UsualWarnMilliseconds : plan.StallWarnMilliseconds, TargetMilliseconds, StopMilliseconds);
            CooldownMilliseconds = Bring(
                plan.CooldownMilliseconds, UsualCooldownMilliseconds, PlanBounds.ShortestCooldownMilliseconds, PlanBounds.LongestCooldownMilliseconds);
            int idle = plan.IdleMaxTenths > 0 ? plan.IdleMaxTenths : UsualIdleTenths;
            PedalTenths = IntegerMath.Clamp((long)idle * AboveIdlePercent / 100, PlanBounds.SlowestIdleTenths, HighestPedalTenths);
            FastestForwardTenths = Fastest(plan.StallForwardTenths, plan.StallForwardToleranceTenths);
            FastestReverseTenths = plan.StallReverseTenths > 0
                ? Fastest(plan.StallReverseTenths, plan.StallReverseToleranceTenths)
                : FastestForwardTenths;
            int window = IntegerMath.Clamp(plan.HoldWindowTenths, 0, PlanBounds.WidestHoldWindowTenths);
            HoldLowTenths = plan.HoldTenths <= 0 ? 0 : plan.HoldTenths - (2 * window);
            HoldHighTenths = plan.HoldTenths <= 0 ? 0 : plan.HoldTenths + (2 * window);
        }

        private static int Fastest(int nominal, int tolerance)
        {
            if (nominal <= 0)
            {
                return 0;
            }

            int held = IntegerMath.Clamp(nominal, PlanBounds.SlowestStallTenths, PlanBounds.FastestStallTenths);
            return held + IntegerMath.Clamp(tolerance, 0, held / 100 * PlanBounds.StallTolerancePercent);
        }

        private static int Bring(int given, int usual, int low, int high) => given <= 0 ? usual : IntegerMath.Clamp(given, low, high);
    }
}
