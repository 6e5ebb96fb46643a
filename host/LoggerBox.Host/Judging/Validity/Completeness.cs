using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>Steps that some cause needs and that are missing or void: without them an empty list of suspects is no finding of health.</summary>
public static class Completeness
{
    private static readonly (Step Step, Step InGear)[] Wanted =
    [
        (Step.Zero, Step.None), (Step.IdleNeutral, Step.None), (Step.IdleForward, Step.IdleInGear), (Step.IdleReverse, Step.IdleInGear),
        (Step.HoldNeutral, Step.None), (Step.HoldForward, Step.HoldInGear), (Step.HoldReverse, Step.HoldInGear), (Step.Governed, Step.None),
        (Step.Relief, Step.None), (Step.StallForward, Step.StallInGear), (Step.StallReverse, Step.StallInGear),
    ];

    public static IEnumerable<ValidityNote> Notes(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        foreach (var (step, inGear) in Wanted)
        {
            if (step == Step.StallReverse && !evidence.Sheet.StallReverseAllowed)
            {
                continue;
            }

            if (InGear(evidence.Steps, inGear) is { Count: > 0 } holds)
            {
                if (holds.Count == 1 && IsReverse(step))
                {
                    yield return new ValidityNote("incomplete", ValidityEffect.Note, inGear, Sentences.SeenOnce(inGear));
                }
            }
            else if (evidence.Steps.Good(step) is not { } hold)
            {
                yield return new ValidityNote("incomplete", ValidityEffect.Note, step, evidence.Steps.Void(step) is null ? Sentences.StepMissing(step) : Sentences.StepVoid(step));
            }
            else if (MissingChannels(hold, step) is { Count: > 0 } missing)
            {
                yield return new ValidityNote("incomplete", ValidityEffect.Note, step, Sentences.ChannelsMissing(missing, step));
            }
        }

        if (FuelLimits.IsFuelUnknown(evidence.Sheet, evidence.Facts.Fuel) && FuelLimits.Differing(evidence.Sheet) is { Count: > 0 } differing)
        {
            yield return new ValidityNote("incomplete", ValidityEffect.Note, Step.None, Sentences.FuelUnknown(evidence.Sheet.EngineByFuel.Keys, differing));
        }
    }

    private static IReadOnlyList<MeasuredHold> InGear(StepReadings steps, Step inGear) => inGear == Step.None ? [] : steps.GoodInGear(inGear);

    private static bool IsReverse(Step step) => step is Step.IdleReverse or Step.HoldReverse or Step.StallReverse;

    private static List<string> MissingChannels(MeasuredHold hold, Step step)
    {
        bool pressures = step is not (Step.Zero or Step.Governed or Step.Relief or Step.StallForward or Step.StallReverse);
        var channels = pressures ? new[] { Channel.Speed, Channel.Main, Channel.Clutch, Channel.Converter } : step == Step.Zero ? [] : [Channel.Speed];
        return [.. channels.Where(channel => hold.Of(channel) is null).Select(Words.ChannelName)];
    }
}
