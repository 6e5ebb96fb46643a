using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;

namespace LoggerBox.Host.Report;

/// <summary>The one sentence at the top: what the whole test comes to, in words that promise no more than was measured.</summary>
public static class Outcome
{
    public const string Incomplete = "incomplete";

    public static string Headline(Judgement judgement)
    {
        List<Suspect> first = [.. judgement.Suspects.Where(suspect => suspect.Rank == 1)];
        if (first.Count > 0)
        {
            return (first.Count == 1 ? "Suspect: " : "Suspects: ") + string.Join(", or ", first.Select(suspect => CauseWords.Of(suspect.Code)));
        }

        if (IsIncomplete(judgement))
        {
            return "No suspect so far; the test is not complete";
        }

        if (!IsJudged(judgement))
        {
            return "Nothing was judged: the data sheet gives no limit for what was measured";
        }

        return judgement.Checks.Any(check => VerdictWords.IsOutside(check.Verdict))
            ? "Readings outside the limits, and no known cause explains them"
            : "What was measured is normal";
    }

    public static string Explanation(Judgement judgement)
    {
        int judged = judgement.Checks.Count(Counts);
        int outside = judgement.Checks.Count(check => VerdictWords.IsOutside(check.Verdict));
        int close = judgement.Checks.Count(check => VerdictWords.IsClose(check.Verdict));
        int open = judgement.Checks.Count - judged;
        string counts = $"{judged} readings judged: {outside} outside the limits, {close} too close to a limit to call, {judged - outside - close} inside.";
        return open == 0 ? counts : counts + $" {open} not measured or void.";
    }

    /// <summary>Whether any reading met a limit: without one, no suspect is no finding of health.</summary>
    public static bool IsJudged(Judgement judgement) => judgement.Checks.Any(Counts);

    /// <summary>No suspect, and no finding of health either.</summary>
    public static bool IsOpen(Judgement judgement) =>
        IsIncomplete(judgement) || !IsJudged(judgement) || judgement.Checks.Any(check => VerdictWords.IsOutside(check.Verdict));

    private static bool Counts(Check check) => check.Verdict is not (Verdict.NotMeasured or Verdict.Void);

    public static bool IsIncomplete(Judgement judgement) => judgement.Validity.Any(note => note.Code == Incomplete);
}
