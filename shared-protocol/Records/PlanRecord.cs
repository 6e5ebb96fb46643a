using LoggerBox.Protocol.Rules;

namespace LoggerBox.Protocol.Records
{
    /// <summary>
    /// What the logger is told of the truck, made from its data sheet: speeds in tenths of rpm, pressures in pascal, times in milliseconds.
    /// 0 is "not given" throughout (a limit of 0 is no limit).
    /// </summary>
    public sealed class PlanRecord : IRecord
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

        public RecordCode Code => RecordCode.Plan;

        public void Write(ByteWriter writer)
        {
            writer.WriteText(Name, RecordFormat.TextWidth);
            writer.WriteInt32(IdleMinTenths);
            writer.WriteInt32(IdleMaxTenths);
            writer.WriteInt32(GovernedTenths);
            writer.WriteInt32(GovernedToleranceTenths);
            writer.WriteInt32(ReliefDropMinTenths);
            writer.WriteInt32(ReliefDropMaxTenths);
            writer.WriteInt32(StallForwardTenths);
            writer.WriteInt32(StallForwardToleranceTenths);
            writer.WriteInt32(StallReverseTenths);
            writer.WriteInt32(StallReverseToleranceTenths);
            writer.WriteBoolean(StallReverseForbidden);
            writer.WriteInt32(HoldTenths);
            writer.WriteInt32(HoldWindowTenths);
            writer.WriteInt32(MainIdleMinPascal);
            writer.WriteInt32(MainHoldMinPascal);
            writer.WriteInt32(MainHoldMaxPascal);
            writer.WriteInt32(ClutchIdleMinPascal);
            writer.WriteInt32(StallTargetMilliseconds);
            writer.WriteInt32(StallWarnMilliseconds);
            writer.WriteInt32(StallStopMilliseconds);
            writer.WriteInt32(CooldownMilliseconds);
            writer.WriteUInt16(PickupPulses);
            writer.WriteUInt16(PickupRevolutions);
        }

        public bool TryRead(ByteReader reader)
        {
            Name = reader.ReadText(RecordFormat.TextWidth);
            IdleMinTenths = reader.ReadInt32();
            IdleMaxTenths = reader.ReadInt32();
            GovernedTenths = reader.ReadInt32();
            GovernedToleranceTenths = reader.ReadInt32();
            ReliefDropMinTenths = reader.ReadInt32();
            ReliefDropMaxTenths = reader.ReadInt32();
            StallForwardTenths = reader.ReadInt32();
            StallForwardToleranceTenths = reader.ReadInt32();
            StallReverseTenths = reader.ReadInt32();
            StallReverseToleranceTenths = reader.ReadInt32();
            StallReverseForbidden = reader.ReadBoolean();
            HoldTenths = reader.ReadInt32();
            HoldWindowTenths = reader.ReadInt32();
            MainIdleMinPascal = reader.ReadInt32();
            MainHoldMinPascal = reader.ReadInt32();
            MainHoldMaxPascal = reader.ReadInt32();
            ClutchIdleMinPascal = reader.ReadInt32();
            StallTargetMilliseconds = reader.ReadInt32();
            StallWarnMilliseconds = reader.ReadInt32();
            StallStopMilliseconds = reader.ReadInt32();
            CooldownMilliseconds = reader.ReadInt32();
            PickupPulses = reader.ReadUInt16();
            PickupRevolutions = reader.ReadUInt16();
            return !reader.TooShort && PickupPulses != 0 && PickupRevolutions != 0;
        }
    }
}
