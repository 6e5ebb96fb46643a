using LoggerBox.Protocol.Rules;

namespace LoggerBox.Protocol.Records
{
    /// <summary>
    /// What the logger is told of the truck, made from its data sheet: speeds in tenths of rpm, pressures in pascal, times in milliseconds.
    /// 0 is "not given" throughout (a limit of 0 is no limit).
    /// </summary>
    public sealed class PlanRecord
    {
        public string Name = "";
        public int IdleMinTenths;
        public int IdleMaxTenths;
        public int GovernedTenths;
        public int GovernedToleranceTenths;
        public int ReliefDropMinTenths;
        public int ReliefDropMaxTenths;
        public int StallForwardTenths;
        public int StallForwardToleranceTenths;
        public int StallReverseTenths;
        public int StallReverseToleranceTenths;
        public bool StallReverseForbidden;
        public int HoldTenths = 20000;
        public int HoldWindowTenths = 750;
        public int MainIdleMinPascal;
        public int MainHoldMinPascal;
        public int MainHoldMaxPascal;
        public int ClutchIdleMinPascal;
        public int StallTargetMilliseconds = 5000;
        public int StallWarnMilliseconds = 8000;
        public int StallStopMilliseconds = 10000;
        public int CooldownMilliseconds = 60000;
        public ushort PickupPulses = 1;
        public ushort PickupRevolutions = 1;
    }
}
