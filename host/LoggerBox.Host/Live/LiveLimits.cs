using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Checking;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Live;

/// <summary>Which limit of a sheet belongs to a step while it is being done.</summary>
/// <param name="engine">Those of the fuel in use.</param>
/// <param name="unit">That pressures are shown in.</param>
public sealed class LiveLimits(DataSheet sheet, EngineLimits engine, PressureUnit unit)
{
    private readonly double scale = sheet.Unit.InPascal() / unit.InPascal();

    public double HoldRpm => sheet.HoldRpm;

    public Limit? Of(int channel, Step step, double? rpm) =>
        channel == Channel.Speed ? Speed(step) : Converted(StepLimits.Pressure(sheet, step, channel, rpm));

    private Limit? Speed(Step step) => step switch
    {
        Step.IdleNeutral => engine.IdleRpm,
        Step.Governed => engine.GovernedRpm,
        Step.StallForward => engine.StallForwardRpm,
        Step.StallReverse => engine.StallReverseRpm,
        Step.StallInGear when engine.StallForwardRpm == engine.StallReverseRpm => engine.StallForwardRpm,
        Step.HoldNeutral or Step.HoldForward or Step.HoldReverse or Step.HoldInGear =>
            new Limit(sheet.HoldRpm - sheet.HoldWindowRpm, sheet.HoldRpm + sheet.HoldWindowRpm, sheet.HoldRpm, 0),
        _ => null,
    };

    private Limit? Converted(Limit? limit) => limit is null ? null : limit with { Min = limit.Min * scale, Max = limit.Max * scale, Nominal = limit.Nominal * scale };
}
