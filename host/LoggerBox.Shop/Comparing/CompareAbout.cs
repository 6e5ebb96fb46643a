using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Report;
using LoggerBox.Host.Units;
using LoggerBox.Shop.Traces;

namespace LoggerBox.Shop.Comparing;

/// <summary>The steps that both have, and where each lies in its recording: what is laid over each other begins at the hold.</summary>
internal sealed record CompareAbout(string Unit, string UnitWords, IReadOnlyList<ComparedStep> Steps, IReadOnlyList<ComparedEngagement> Engagements)
{
    public static CompareAbout Of(ComparedSubjects compared)
    {
        List<ComparedHold> before = [.. Holds(compared.Before)];
        List<ComparedHold> after = [.. Holds(compared.After)];
        PressureUnit unit = compared.Comparison.Unit;
        return new CompareAbout(
            unit.Code(),
            Figure.Unit(unit),
            [.. before.Join(after, hold => hold.Step, hold => hold.Step, (one, other) => new ComparedStep(one.Step, one.Words, one, other)).DistinctBy(step => step.Step)],
            ComparedEngagement.Of(compared));
    }

    private static IEnumerable<ComparedHold> Holds(JudgedSubject judged) => judged.Subject.Recordings
        .SelectMany(recording => TraceAbout.Of(judged, recording.Row!.Id).Holds.Select(hold => new ComparedHold(hold.Step, hold.Words, recording.Row.Id, hold.From, hold.To, hold.Limits)));
}

internal sealed record ComparedStep(string Step, string Words, ComparedHold Before, ComparedHold After);

/// <param name="From">Seconds from the session's start.</param>
internal sealed record ComparedHold(string Step, string Words, string Session, double From, double To, IReadOnlyList<TraceLimit> Limits);
