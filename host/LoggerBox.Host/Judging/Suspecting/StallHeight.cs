using System;
using System.Linq;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>
/// How high a stall stands. A stall speed is a guide: a little off in both directions alone points to nothing that a transmission is opened
/// for. With nothing to drive, the engine runs up to its governed speed.
/// </summary>
public static class StallHeight
{
    /// <summary>Low by less than this never points to the inside of a converter, high in both directions by less to none of a transmission. Common practice, no source.</summary>
    public const double GuideRpm = 300;

    /// <summary>An engine without load but the drag of oil stands no farther below its governed speed. Common practice, no source.</summary>
    private const double NearGoverned = 0.93;

    /// <summary>Where governed speed is neither measured nor in the sheet: so much above the stall's limit.</summary>
    private const double FarAboveStall = 1.2;

    /// <summary>
    /// Every stall that was read stands at about governed speed, void or not. What was held for too long beside a good stall in the same gear was
    /// half a pedal.
    /// </summary>
    public static bool IsNearGoverned(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        StepReadings steps = evidence.Steps;
        Measured[] stalls =
        [
            .. steps.All
                .Where(hold => HoldGates.IsStall(hold.Step) && !(steps.VoidCode(hold) == StallNotes.TooLong && steps.Good(hold.Step) is not null))
                .Select(hold => hold.Rpm).OfType<Measured>(),
        ];
        double? least = NearGoverned * (evidence.Governed?.Value ?? evidence.Engine.GovernedRpm?.Min)
            ?? FarAboveStall * (evidence.Engine.StallForwardRpm?.Max ?? evidence.Engine.StallReverseRpm?.Max);
        return stalls.Length > 0 && least is double rpm && stalls.All(stall => stall.Value + stall.Expanded >= rpm);
    }

    /// <summary>Both directions are above their limit, alike, and by no more than a guide's worth.</summary>
    public static bool IsALittleHighInBoth(Evidence evidence, Measured? forward, Measured? reverse)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        return IsALittle(forward, evidence.Engine.StallForwardRpm?.Max) && IsALittle(reverse, evidence.Engine.StallReverseRpm?.Max) && !IsNearGoverned(evidence);
    }

    private static bool IsALittle(Measured? stall, double? most) => stall is not null && stall.Value > most && stall.Value - most < GuideRpm;
}
