using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>Steps in gear that were tried and gave no reading: what went wrong, as far as the samples tell, and what to do.</summary>
public static class MissedSteps
{
    public const string Code = "not-captured";

    /// <summary>A try at a step is nearer to its speed than this part of it.</summary>
    private const double Near = 0.2;

    /// <summary>Shorter than this nothing can have stood still.</summary>
    private const double FewestSeconds = 2.5;

    /// <summary>A change this large, of the speed, is more than a foot's tremor; most of it in one direction is a truck that moves.</summary>
    private const double Moves = 0.02;
    private const double OneWay = 0.6;

    private static readonly (Gear Gear, Step Stall, Step Hold)[] Gears =
    [
        (Gear.Forward, Step.StallForward, Step.HoldForward), (Gear.Reverse, Step.StallReverse, Step.HoldReverse),
    ];

    public static IEnumerable<ValidityNote> Notes(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        foreach (var (gear, stall, hold) in Gears)
        {
            var missing = new[] { (Step: stall, Rpm: Expected(evidence, stall)), (Step: hold, Rpm: evidence.Sheet.HoldRpm) }
                .Where(one => one.Rpm > 0 && IsMissing(evidence.Steps, one.Step))
                .ToList();
            if (missing.Count == 0)
            {
                continue;
            }

            var told = new Dictionary<Step, string>();
            foreach (var run in evidence.Sessions.SelectMany(session => SpeedRuns.Of(session, gear)).Where(run => !Became(evidence.Steps, run, named: true)))
            {
                var (step, rpm) = missing.MinBy(one => Math.Abs(run.Mean - one.Rpm));
                if (Why(evidence.Steps, run, step, rpm) is { } why)
                {
                    told[step] = why;
                }
            }

            foreach (var (step, why) in told)
            {
                yield return new ValidityNote(Code, ValidityEffect.Note, step, why);
            }
        }
    }

    private static string? Why(StepReadings steps, SpeedRun run, Step step, double expected)
    {
        if (Became(steps, run, named: false))
        {
            return HoldGates.IsStall(step) && run.Mean < expected ? Sentences.HalfAPedal(step, run.Mean, run.Seconds, expected) : null;
        }

        if (Math.Abs(run.Mean - expected) > Near * expected)
        {
            return null;
        }

        double change = Math.Abs(run.Last - run.First);
        return run.Seconds < FewestSeconds ? Sentences.GivenUp(step, run.Mean, run.Seconds)
            : change > Moves * run.Mean && change > OneWay * (run.Most - run.Least) ? Sentences.NeverAtRest(step, run.First, run.Last, run.Seconds)
            : Sentences.Unsteady(step, run.Least, run.Most, run.Seconds);
    }

    /// <summary>A hold was found in it, with a step's name or with none.</summary>
    private static bool Became(StepReadings steps, SpeedRun run, bool named) => steps.All.Any(hold =>
        hold.IsOf(run.Session) && (hold.Step != Step.None) == named
        && hold.Record.StartMicroseconds < run.ToMicroseconds && hold.Record.StartMicroseconds + (hold.Record.DurationMilliseconds * 1000L) > run.FromMicroseconds);

    private static bool IsMissing(StepReadings steps, Step step) => steps.Good(step) is null && steps.Void(step) is null;

    private static double Expected(Evidence evidence, Step stall)
    {
        Limit? limit = stall == Step.StallReverse ? evidence.Engine.StallReverseRpm : evidence.Engine.StallForwardRpm;
        return limit?.Nominal ?? ((limit?.Min + limit?.Max) / 2) ?? limit?.Min ?? limit?.Max ?? 0;
    }
}
