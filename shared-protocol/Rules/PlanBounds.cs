using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Rules
{
    /// <summary>
    /// What a plan may say. The bounds are wider than any lift truck needs and narrow enough that no guard loses its meaning:
    /// stalls of up to 30 s and pauses from 15 s are published, everything beyond is a slip of the pen.
    /// </summary>
    public static class PlanBounds
    {
        public const int SlowestIdleTenths = 3000;
        public const int FastestIdleTenths = 12000;
        public const int SlowestGovernedTenths = 12000;
        public const int FastestGovernedTenths = 45000;
        public const int SlowestStallTenths = 8000;
        public const int FastestStallTenths = 35000;
        public const int StallTolerancePercent = 25;

        // A stall can't be faster than the governor lets the engine run without load; sheets round both.
        public const int StallPercentOfGoverned = 110;
        public const int WidestToleranceTenths = 5000;
        public const int LargestDropTenths = 10000;
        public const int SlowestHoldTenths = 8000;
        public const int FastestHoldTenths = 30000;
        public const int WidestHoldWindowTenths = 2500;

        public const int ShortestTargetMilliseconds = 1000;
        public const int LongestTargetMilliseconds = 15000;
        public const int ShortestStopMilliseconds = 2000;
        public const int LongestStopMilliseconds = 30000;
        public const int ShortestCooldownMilliseconds = 15000;
        public const int LongestCooldownMilliseconds = 600000;

        public const int HighestPascal = 7000000;

        public const int MostPulsesPerRevolution = 400;
        public const int MostRevolutionsPerPulse = 4;

        /// <summary>The first part of the plan that is outside its bounds; <see cref="PlanFault.None"/> where all is inside.</summary>
        public static PlanFault Check(PlanRecord plan)
        {
            return !SpeedsAreSane(plan) ? PlanFault.Speeds
                : !TimesAreSane(plan) ? PlanFault.StallTimes
                : !PressuresAreSane(plan) ? PlanFault.Pressures
                : !PickupIsSane(plan) ? PlanFault.Pickup
                : PlanFault.None;
        }

        private static bool SpeedsAreSane(PlanRecord plan) =>
            NotGivenOr(plan.IdleMinTenths, SlowestIdleTenths, FastestIdleTenths)
            && NotGivenOr(plan.IdleMaxTenths, SlowestIdleTenths, FastestIdleTenths)
            && InOrder(plan.IdleMinTenths, plan.IdleMaxTenths)
            && NotGivenOr(plan.GovernedTenths, SlowestGovernedTenths, FastestGovernedTenths)
            && Inside(plan.GovernedToleranceTenths, 0, WidestToleranceTenths)
            && Inside(plan.ReliefDropMinTenths, 0, LargestDropTenths)
            && Inside(plan.ReliefDropMaxTenths, 0, LargestDropTenths)
            && InOrder(plan.ReliefDropMinTenths, plan.ReliefDropMaxTenths)
            && StallIsSane(plan.StallForwardTenths, plan.StallForwardToleranceTenths, plan.GovernedTenths)
            && StallIsSane(plan.StallReverseTenths, plan.StallReverseToleranceTenths, plan.GovernedTenths)
            && NotGivenOr(plan.HoldTenths, SlowestHoldTenths, FastestHoldTenths)
            && Inside(plan.HoldWindowTenths, 0, WidestHoldWindowTenths);

        // The highest stall speed is what the overspeed guard goes by: it can't be put where no clutch that slips would reach it.
        private static bool StallIsSane(int nominal, int tolerance, int governed)
        {
            if (nominal == 0)
            {
                return tolerance == 0;
            }

            long fastest = (long)nominal + tolerance;
            return Inside(nominal, SlowestStallTenths, FastestStallTenths)
                && Inside(tolerance, 0, nominal / 100 * StallTolerancePercent)
                && (governed == 0 || fastest * 100 <= (long)governed * StallPercentOfGoverned);
        }

        private static bool TimesAreSane(PlanRecord plan) =>
            NotGivenOr(plan.StallTargetMilliseconds, ShortestTargetMilliseconds, LongestTargetMilliseconds)
            && NotGivenOr(plan.StallWarnMilliseconds, ShortestTargetMilliseconds, LongestStopMilliseconds)
            && NotGivenOr(plan.StallStopMilliseconds, ShortestStopMilliseconds, LongestStopMilliseconds)
            && InOrder(plan.StallTargetMilliseconds, plan.StallWarnMilliseconds)
            && InOrder(plan.StallWarnMilliseconds, plan.StallStopMilliseconds)
            && InOrder(plan.StallTargetMilliseconds, plan.StallStopMilliseconds)
            && NotGivenOr(plan.CooldownMilliseconds, ShortestCooldownMilliseconds, LongestCooldownMilliseconds);

        private static bool PressuresAreSane(PlanRecord plan) =>
            Inside(plan.MainIdleMinPascal, 0, HighestPascal)
            && Inside(plan.MainHoldMinPascal, 0, HighestPascal)
            && Inside(plan.MainHoldMaxPascal, 0, HighestPascal)
            && InOrder(plan.MainHoldMinPascal, plan.MainHoldMaxPascal)
            && Inside(plan.ClutchIdleMinPascal, 0, HighestPascal);

        private static bool PickupIsSane(PlanRecord plan) =>
            plan.PickupPulses >= 1 && plan.PickupRevolutions >= 1
            && plan.PickupPulses <= MostPulsesPerRevolution * plan.PickupRevolutions
            && plan.PickupRevolutions <= MostRevolutionsPerPulse * plan.PickupPulses;

        private static bool NotGivenOr(int value, int low, int high) => value == 0 || Inside(value, low, high);

        private static bool InOrder(int low, int high) => low == 0 || high == 0 || low <= high;

        private static bool Inside(int value, int low, int high) => value >= low && value <= high;
    }

    public enum PlanFault : byte
    {
        None,
        Speeds,
        StallTimes,
        Pressures,
        Pickup,
    }
}
