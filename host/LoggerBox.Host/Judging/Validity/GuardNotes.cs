using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>What the logger warned of while it recorded, and when no more stall may be asked for: slipping plates destroy themselves.</summary>
public static class GuardNotes
{
    public const string NoStall = "no-more-stalls";
    public const string Warned = "logger-warned";

    // To a hold and away from it.
    private const double RunUpSeconds = 5;

    private static readonly Cue[] Guards = [Cue.PressureTooLowToStall, Cue.MainFarTooHigh, Cue.Overspeed, Cue.StallStop, Cue.DriveCut];

    private static readonly string[] Clutches =
    [
        .. ((Cause[])[
            Cause.ForwardClutchLeak, Cause.ReverseClutchLeak, Cause.BothClutchesLeak, Cause.ForwardFeedOpen, Cause.ReverseFeedOpen,
            Cause.ForwardClutchSlip, Cause.ReverseClutchSlip]).Select(CauseCodes.Text),
    ];

    /// <param name="checks">In the unit in which they are shown.</param>
    public static IEnumerable<ValidityNote> Of(Evidence evidence, IReadOnlyList<Check> checks, IReadOnlyList<Suspect> suspects)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(checks);
        ArgumentNullException.ThrowIfNull(suspects);
        if (Why(evidence, checks, suspects) is { Count: > 0 } reasons)
        {
            yield return new ValidityNote(NoStall, ValidityEffect.Note, Step.None, Sentences.NoMoreStalls(reasons));
        }

        for (int i = 0; i < evidence.Sessions.Count; i++)
        {
            string[] warnings = [.. Cues(evidence.Sessions[i]).Where(one => !IsOnFreeWheels(evidence, evidence.Sessions[i], one)).GroupBy(one => (Cue)one.Value).Select(cue => Told(evidence, evidence.Sessions[i], [.. cue]))];
            if (warnings.Length > 0)
            {
                yield return new ValidityNote(Warned, ValidityEffect.Note, Step.None, Sentences.InRecording(i, evidence.Sessions.Count) + Sentences.LoggerWarned(warnings));
            }
        }
    }

    // A logger that knows no set-up takes a hold at speed with free drive wheels for a stall that is too long and too fast, and rightly warns; once the hold has its name nothing was wrong.
    private static bool IsOnFreeWheels(Evidence evidence, RecordedSession session, EventRecord cue)
    {
        double second = session.SecondsAt(cue.Microseconds);
        return (Cue)cue.Value is Cue.StallStop or Cue.Overspeed && evidence.Steps.All.Any(hold => hold.IsOf(session) && (hold.Step is Step.HoldForward or Step.HoldReverse)
            && second > hold.StartSeconds - RunUpSeconds && second < hold.StartSeconds + hold.DurationSeconds + RunUpSeconds);
    }

    private static string Told(Evidence evidence, RecordedSession session, EventRecord[] cues)
    {
        double first = session.SecondsAt(cues[0].Microseconds);
        var cue = (Cue)cues[0].Value;
        return Sentences.Warning(cue, first, cues.Length, cue == Cue.PressureTooLowToStall ? StallsAfter(evidence, session, first) : 0);
    }

    private static List<string> Why(Evidence evidence, IReadOnlyList<Check> checks, IReadOnlyList<Suspect> suspects)
    {
        List<string> reasons = [];
        if (checks.FirstOrDefault(check => check.Quantity == "main" && check.Verdict == Verdict.Low && IsIdle(check.Step)) is { } low)
        {
            reasons.Add(Sentences.IdlePressureLow(low));
        }
        else if (evidence.Sessions.SelectMany(Cues).Any(one => (Cue)one.Value == Cue.PressureTooLowToStall))
        {
            reasons.Add(Sentences.WarnedOfLowPressure());
        }

        if (suspects.Any(suspect => Clutches.Contains(suspect.Code)))
        {
            reasons.Add(Sentences.ClutchSuspected());
        }

        return reasons;
    }

    private static bool IsIdle(string step) => StepCodes.TryParse(step, out Step parsed) && parsed is Step.IdleNeutral or Step.IdleForward or Step.IdleReverse or Step.IdleInGear;

    private static IEnumerable<EventRecord> Cues(RecordedSession session) => session.Events.Where(one => one.Kind == EventKind.Cue && Guards.Contains((Cue)one.Value));

    private static int StallsAfter(Evidence evidence, RecordedSession session, double second) =>
        evidence.Steps.Stalls.Count(run => run.IsOf(session) && run.StartSeconds > second);
}
