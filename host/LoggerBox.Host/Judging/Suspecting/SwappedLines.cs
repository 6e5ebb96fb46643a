using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>
/// Two hoses exchanged: another line than the clutch's goes empty in neutral, or the converter stands above the main that feeds it.
/// </summary>
public static class SwappedLines
{
    /// <summary>Of its pressure in gear; a line that holds less in neutral is the clutch's.</summary>
    private const double Empty = 0.12;

    public static CauseScore? Find(Evidence evidence, PressureUnit unit)
    {
        var running = evidence.Steps.All.Where(hold => hold.Rpm is { Value: > 300 }).ToList();
        return ComesAndGoes(running, Channel.Main, "main", unit)
            ?? ComesAndGoes(running, Channel.Converter, "converter", unit)
            ?? ClutchLineElsewhere(running, Channel.Main, "main", unit)
            ?? ClutchLineElsewhere(running, Channel.Converter, "converter", unit)
            ?? ConverterAboveMain(running, unit);
    }

    // Whatever the tags say, or where there are none: only a clutch's line goes empty with the engine running, and it does so in every neutral.
    private static CauseScore? ComesAndGoes(List<MeasuredHold> running, int channel, string name, PressureUnit unit)
    {
        var both = running.Where(hold => hold.Clutch is not null && hold.Of(channel) is not null).ToList();
        if (both.Count < 4)
        {
            return null;
        }

        double full = both.Max(hold => hold.Of(channel)!.Value);
        double leastClutch = both.Min(hold => hold.Clutch!.Value);
        double mostClutch = both.Max(hold => hold.Clutch!.Value);
        var empty = both.Where(hold => hold.Of(channel)!.Value < Empty * full).ToList();
        bool clutchAlwaysStands = leastClutch > 0.15 * mostClutch && leastClutch > 10_000;
        return empty.Count >= 2 && both.Count - empty.Count >= 2 && full > 50_000 && clutchAlwaysStands
            ? Exchanged(empty[0], channel, name, unit)
            : null;
    }

    private static CauseScore Exchanged(MeasuredHold example, int channel, string name, PressureUnit unit) => new(
        Cause.PressureLinesSwapped,
        9,
        -1,
        [Sentences.OtherLineEmpties(name, example.Of(channel)!, example.Clutch!, unit)],
        []);

    private static CauseScore? ClutchLineElsewhere(List<MeasuredHold> running, int channel, string name, PressureUnit unit)
    {
        var neutral = running.Where(InNeutral).Where(hold => hold.Clutch is not null && hold.Of(channel) is not null).ToList();
        var inGear = running.Where(InGear).Where(hold => hold.Clutch is not null && hold.Of(channel) is not null).ToList();
        if (neutral.Count < 2 || inGear.Count < 2)
        {
            return null;
        }

        double otherInGear = inGear.Average(hold => hold.Of(channel)!.Value);
        double clutchInGear = inGear.Average(hold => hold.Clutch!.Value);
        bool otherEmpties = neutral.Count(hold => hold.Of(channel)!.Value < Empty * otherInGear) >= 0.8 * neutral.Count;
        bool clutchStands = neutral.Count(hold => hold.Clutch!.Value > 0.3 * clutchInGear) >= 0.8 * neutral.Count;
        if (!otherEmpties || !clutchStands || otherInGear < 50_000)
        {
            return null;
        }

        var example = neutral[0];
        return new CauseScore(
            Cause.PressureLinesSwapped,
            9,
            -1,
            [Sentences.OtherLineEmptiesInNeutral(name, example.Of(channel)!, example.Clutch!, unit)],
            []);
    }

    private static CauseScore? ConverterAboveMain(List<MeasuredHold> running, PressureUnit unit)
    {
        var both = running.Where(hold => hold.Main is not null && hold.Converter is not null).ToList();
        int above = both.Count(hold => hold.Converter!.Value > (1.25 * hold.Main!.Value) + hold.Main.Expanded);
        if (both.Count < 3 || above < 0.9 * both.Count || both.Average(hold => hold.Converter!.Value) < 100_000)
        {
            return null;
        }

        return new CauseScore(
            Cause.PressureLinesSwapped,
            9,
            -1,
            [Sentences.ConverterAboveMain(both[^1].Converter!, both[^1].Main!, unit)],
            []);
    }

    private static bool InNeutral(MeasuredHold hold) => hold.Step is Step.IdleNeutral or Step.HoldNeutral or Step.Governed or Step.Relief
        || (hold.Step == Step.None && hold.Gear == Gear.Neutral);

    private static bool InGear(MeasuredHold hold) => hold.Step is Step.IdleForward or Step.IdleReverse or Step.HoldForward or Step.HoldReverse
        or Step.IdleInGear or Step.HoldInGear or Step.StallForward or Step.StallReverse or Step.StallInGear;
}
