using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Judging.Suspecting;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>How long each stall was held, how soon after the one before it, and where its speed alone is no finding.</summary>
public static class StallNotes
{
    public const string TooLong = "stall-too-long";

    private const double DefaultLimitSeconds = 10;
    private const double DefaultCooldownSeconds = 60;

    /// <summary>Between the pedal and a speed that a hold can begin at.</summary>
    private const double Settling = 2;

    public static double LimitSeconds(DataSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return sheet.StallLimitSeconds ?? DefaultLimitSeconds;
    }

    /// <summary>
    /// Parts that came to rest only after the limit: by then the oil was hot, and what they read says nothing of the truck. Where the step was
    /// done in time as well, nothing of a run that was not stands in for it.
    /// </summary>
    public static IEnumerable<MeasuredHold> Late(IReadOnlyList<StallRun> runs, DataSheet sheet)
    {
        double longest = LimitSeconds(sheet);
        return runs.SelectMany(run => run.Parts.Where(part =>
            part.StartSeconds - run.StartSeconds > longest || (run.Seconds > longest && IsDoneInTime(runs, part.Step, longest))));
    }

    // Without tags one run in time may be the other direction's.
    private static bool IsDoneInTime(IReadOnlyList<StallRun> runs, Step step, double longest) =>
        runs.Count(run => run.Parts[0].Step == step && run.Seconds <= longest) >= (step == Step.StallInGear ? 2 : 1);

    /// <summary>From the arrival of the speed to where this part begins.</summary>
    public static double SecondsInto(MeasuredHold part, IReadOnlyList<StallRun> runs)
    {
        ArgumentNullException.ThrowIfNull(part);
        return part.StartSeconds - (runs.FirstOrDefault(run => run.Parts.Contains(part))?.StartSeconds ?? part.StartSeconds);
    }

    public static IEnumerable<ValidityNote> Of(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        double longest = LimitSeconds(evidence.Sheet);
        double cooldown = evidence.Sheet.StallCooldownSeconds ?? DefaultCooldownSeconds;
        StallRun? before = null;
        IReadOnlyList<StallRun> runs = evidence.Steps.Stalls;
        foreach (StallRun run in runs)
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

        foreach (Step step in NeverAtRest(evidence, runs, longest).Distinct())
        {
            yield return new ValidityNote(TooLong, ValidityEffect.Note, step, Sentences.StallNeverAtRest(step, longest));
        }

        var roles = new Roles(evidence.Steps);
        Measured? forward = roles.Of(Step.StallForward)?.Rpm;
        Measured? reverse = roles.Of(Step.StallReverse)?.Rpm;
        if (StallHeight.IsALittleHighInBoth(evidence, forward, reverse))
        {
            yield return new ValidityNote("stall-guide", ValidityEffect.Note, Step.None, Sentences.StallALittleHigh(forward!.Value, reverse!.Value, evidence.Engine.StallForwardRpm!.Max!.Value));
        }
    }

    // The logger called to stop, and nothing in gear stood still just then: a stall that only sagged, or a truck that crept.
    private static IEnumerable<Step> NeverAtRest(Evidence evidence, IReadOnlyList<StallRun> runs, double longest)
    {
        foreach (RecordedSession session in evidence.Sessions)
        {
            foreach (EventRecord stop in session.Events.Where(one => one.Kind == EventKind.Cue && (Cue)one.Value == Cue.StallStop))
            {
                double at = session.SecondsAt(stop.Microseconds);
                bool isRead = runs.Any(run => run.IsOf(session) && run.StartSeconds <= at && at <= run.EndSeconds + 1)
                    || evidence.Steps.All.Any(hold => hold.IsOf(session) && hold.Gear != Gear.Neutral
                        && hold.StartSeconds <= at && hold.StartSeconds + hold.DurationSeconds >= at - longest + Settling);
                if (!isRead)
                {
                    yield return StepAt(session, stop.Microseconds);
                }
            }
        }
    }

    private static Step StepAt(RecordedSession session, long microseconds) =>
        (Gear?)session.Events.LastOrDefault(one => one.Kind == EventKind.GearTag && one.Microseconds <= microseconds)?.Value switch
        {
            Gear.Forward => Step.StallForward,
            Gear.Reverse => Step.StallReverse,
            _ => Step.StallInGear,
        };
}
