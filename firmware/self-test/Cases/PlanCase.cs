using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using LoggerBox.SelfTest.Traces;

namespace LoggerBox.SelfTest.Cases
{
    /// <summary>Plans inside their bounds and outside of them.</summary>
    internal sealed class PlanCase : SelfTestCase
    {
        public PlanCase()
            : base("plans")
        {
        }

        public override void Execute()
        {
            ExpectNumber((int)PlanFault.None, (int)PlanBounds.Check(TruckPlan.Whole()), "a sound plan");
            ExpectNumber((int)PlanFault.None, (int)PlanBounds.Check(new PlanRecord()), "an empty plan");
            for (int n = 0; n < 12; n++)
            {
                PlanRecord plan = TruckPlan.Whole();
                PlanFault expected = Spoil(plan, n);
                ExpectNumber((int)expected, (int)PlanBounds.Check(plan), "spoiled plan " + n.ToString());
                Digest.AddNumber((int)PlanBounds.Check(plan));
            }
        }

        private static PlanFault Spoil(PlanRecord plan, int n)
        {
            switch (n)
            {
                case 0:
                    plan.IdleMinTenths = 20;
                    return PlanFault.Speeds;
                case 1:
                    plan.StallForwardTenths = 60000;
                    return PlanFault.Speeds;
                case 2:
                    plan.StallForwardToleranceTenths = 12000;
                    return PlanFault.Speeds;
                case 3:
                    plan.HoldWindowTenths = -1;
                    return PlanFault.Speeds;
                case 4:
                    plan.StallStopMilliseconds = 3600000;
                    return PlanFault.StallTimes;
                case 5:
                    plan.StallTargetMilliseconds = 12000;
                    return PlanFault.StallTimes;
                case 6:
                    plan.CooldownMilliseconds = 1;
                    return PlanFault.StallTimes;
                case 7:
                    plan.MainHoldMaxPascal = int.MaxValue;
                    return PlanFault.Pressures;
                case 8:
                    plan.MainHoldMinPascal = plan.MainHoldMaxPascal + 1;
                    return PlanFault.Pressures;
                case 9:
                    plan.PickupPulses = 0;
                    return PlanFault.Pickup;
                case 10:
                    plan.PickupRevolutions = 9;
                    return PlanFault.Pickup;
                default:
                    plan.PickupPulses = 65535;
                    return PlanFault.Pickup;
            }
        }
    }
}
