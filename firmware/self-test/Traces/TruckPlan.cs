using LoggerBox.Protocol.Records;

namespace LoggerBox.SelfTest.Traces
{
    /// <summary>What the logger is told of the invented truck.</summary>
    internal static class TruckPlan
    {
        /// <summary>800 counts a milliampere; 12800 counts are the range.</summary>
        public const int ZeroCounts = 3200;
        public const int SpanCounts = 12800;

        public static PlanRecord Whole()
        {
            PlanRecord plan = new PlanRecord();
            plan.Name = "Self-test truck";
            plan.IdleMinTenths = 6400;
            plan.IdleMaxTenths = 7600;
            plan.GovernedTenths = 24500;
            plan.GovernedToleranceTenths = 600;
            plan.ReliefDropMinTenths = 900;
            plan.ReliefDropMaxTenths = 2600;
            plan.StallForwardTenths = 19400;
            plan.StallForwardToleranceTenths = 1200;
            plan.HoldTenths = 20000;
            plan.HoldWindowTenths = 750;
            plan.MainIdleMinPascal = 300000;
            plan.MainHoldMinPascal = 940000;
            plan.MainHoldMaxPascal = 1240000;
            plan.ClutchIdleMinPascal = 250000;
            plan.PickupPulses = 1;
            plan.PickupRevolutions = 2;
            return plan;
        }

        public static SessionHeader Header(PlanRecord plan, uint intervalMicroseconds)
        {
            SessionHeader header = new SessionHeader();
            header.LoggerId = 0x5E1F7E57;
            header.BootCount = 3;
            header.StartUtcSeconds = 1795600000;
            header.SampleIntervalMicroseconds = intervalMicroseconds;
            header.PickupPulses = plan.PickupPulses;
            header.PickupRevolutions = plan.PickupRevolutions;
            header.HasGearInput = true;
            header.PlanName = plan.Name;
            for (int i = 0; i < header.Pressures.Length; i++)
            {
                ChannelCalibration pressure = header.Pressures[i];
                pressure.Kind = ChannelKind.CurrentLoop;
                pressure.ZeroCounts = ZeroCounts;
                pressure.SpanCounts = SpanCounts;
                pressure.SpanPascal = KilopascalSpan(i + 1) * 1000;
                pressure.AccuracyPascal = 8600;
            }

            return header;
        }

        /// <summary>500, 500 and 300 psi.</summary>
        public static int KilopascalSpan(int channel) => channel == Channel.Converter ? 2068 : 3447;
    }
}
