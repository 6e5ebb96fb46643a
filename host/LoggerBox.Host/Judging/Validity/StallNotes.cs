using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Judging.Suspecting;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>How long each stall was held, how soon after the one before it, and where its speed alone is no finding.</summary>
public static class StallNotes
{
    public const string TooLong = "stall-too-long";

    private const double DefaultLimitSeconds = 10;
    private const double DefaultCooldownSeconds = 60;

    public static double LimitSeconds(DataSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return sheet.StallLimitSeconds ?? DefaultLimitSeconds;
    }

    /// <summary>Parts that came to rest only after the limit: by then the oil was hot, and what they read says nothing of the truck.</summary>
    public static IEnumerable<MeasuredHold> Late(IReadOnlyList<MeasuredHold> holds, DataSheet sheet)
    {
        double longest = LimitSeconds(sheet);
        return StallRun.Of(holds).SelectMany(run => run.Parts.Where(part => part.StartSeconds - run.StartSeconds > longest));
    }

    public static IEnumerable<ValidityNote> Of(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        double longest = LimitSeconds(evidence.Sheet);
        double cooldown = evidence.Sheet.StallCooldownSeconds ?? DefaultCooldownSeconds;
        StallRun? before = null;
        foreach (StallRun run in StallRun.Of(evidence.Steps.All))
        {
            MeasuredHold first = run.Parts[0];
            if (run.Seconds > longest)
            {
                yield return new ValidityNote(TooLong, ValidityEffect.Note, first.Step, Sentences.StallTooLong(first.Step, run.Seconds, longest));
            }

            double gap = before is not null && before.Parts[0].Session == first.Session ? run.StartSeconds - before.EndSeconds : double.MaxValue;
            if (gap < cooldown)
            {
                yield return new ValidityNote(
                    "cool-down-short", ValidityEffect.Note, first.Step, Sentences.CoolDownShort(before!.Parts[0].Step, first.Step, Math.Max(gap, 0), cooldown));
            }

            before = run;
        }

        var roles = new Roles(evidence.Steps);
        Measured? forward = roles.Of(Step.StallForward)?.Rpm;
        Measured? reverse = roles.Of(Step.StallReverse)?.Rpm;
        if (StallHeight.IsALittleHighInBoth(evidence, forward, reverse))
        {
            yield return new ValidityNote("stall-guide", ValidityEffect.Note, Step.None, Sentences.StallALittleHigh(forward!.Value, reverse!.Value, evidence.Engine.StallForwardRpm!.Max!.Value));
        }
    }
}
