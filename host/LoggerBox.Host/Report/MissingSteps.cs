using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report;

/// <summary>What a test that is not complete lacks, in few words: "test not complete: no stall, no relief".</summary>
public static class MissingSteps
{
    private static readonly (string Name, Step[] Steps)[] Parts =
    [
        ("engine off", [Step.Zero]),
        ("idle", [Step.IdleNeutral, Step.IdleForward, Step.IdleReverse, Step.IdleInGear]),
        ("hold", [Step.HoldNeutral, Step.HoldForward, Step.HoldReverse, Step.HoldInGear]),
        ("full pedal", [Step.Governed]),
        ("relief", [Step.Relief]),
        ("stall", [Step.StallForward, Step.StallReverse, Step.StallInGear]),
    ];

    /// <param name="judgement">Of a test that is not complete.</param>
    public static string Of(Judgement judgement)
    {
        List<string> missing = [.. Parts.Select(part => Lacking(part.Name, part.Steps, judgement)).Where(words => words.Length > 0)];
        return "test not complete" + (missing.Count == 0 ? "" : ": " + string.Join(", ", missing));
    }

    private static string Lacking(string name, Step[] steps, Judgement judgement)
    {
        bool isAsked = judgement.Validity.Any(note => note.Code == Outcome.Incomplete && steps.Contains(note.Step));
        return !isAsked ? "" : judgement.Holds.Any(hold => hold.Counts && steps.Contains(hold.Step)) ? $"{name} in part" : $"no {name}";
    }
}
