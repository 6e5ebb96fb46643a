using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Judging.Validity;

namespace LoggerBox.Host.Report;

/// <summary>The one sentence at the top: what the whole test comes to, in words that promise no more than was measured.</summary>
public static class Outcome
{
    public const string Incomplete = "incomplete";

    /// <summary>A note with this code says that all of it was measured before a repair, and nothing after it.</summary>
    public const string OfBefore = "before-the-repair";

    /// <summary>A note with this code doubts which recording was before the repair and which after it.</summary>
    public const string RolesInDoubt = "roles-in-doubt";

    private const int MostNamed = 2;

    public static string Headline(Judgement judgement) =>
        ComesTo(judgement) + (judgement.Validity.Any(note => note.Code == OfBefore) ? " (measured before the repair; nothing was measured after it)" : "");

    private static string ComesTo(Judgement judgement)
    {
        List<Suspect> first = [.. judgement.Suspects.Where(suspect => suspect.Rank == 1)];
        if (first.Count > 0)
        {
            return (first.Count == 1 ? "Suspect: " : "Suspects: ") + string.Join(", or ", first.Select(suspect => CauseWords.Of(suspect.Code)))
                + (IsIncomplete(judgement) ? $" ({MissingSteps.Of(judgement)})" : "");
        }

        if (IsIncomplete(judgement))
        {
            return "No suspect so far; the test is not complete";
        }

        if (!IsJudged(judgement))
        {
            return "Nothing was judged: the data sheet gives no limit for what was measured";
        }

        if (judgement.Checks.Any(check => VerdictWords.IsOutside(check.Verdict)))
        {
            return "Readings outside the limits, and no known cause explains them";
        }

        return IsCold(judgement) ? "No suspect so far; the oil was cold"
            : Borderline(judgement) is { Count: > 0 } close ? $"No suspect; too close to a limit to call: {Some(close)}"
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
        !IsComplete(judgement) || judgement.Checks.Any(check => VerdictWords.IsOutside(check.Verdict) || VerdictWords.IsClose(check.Verdict));

    /// <summary>Every step was measured, judged by limits, and with warm oil.</summary>
    public static bool IsComplete(Judgement judgement) => !IsIncomplete(judgement) && IsJudged(judgement) && !IsCold(judgement);

    public static bool IsCold(Judgement judgement) => judgement.Validity.Any(note => note.Code == SessionNotes.OilCold);

    private static List<string> Borderline(Judgement judgement) =>
        [.. judgement.Checks.Where(check => VerdictWords.IsClose(check.Verdict)).Select(check => $"{Words.Quantity(check.Quantity)} ({StepWords.Of(check.Step).ToLowerInvariant()})")];

    private static string Some(List<string> names) => names.Count <= MostNamed ? string.Join(", ", names) : $"{string.Join(", ", names.Take(MostNamed))} and {names.Count - MostNamed} more";

    private static bool Counts(Check check) => check.Verdict is not (Verdict.NotMeasured or Verdict.Void);

    public static bool IsIncomplete(Judgement judgement) => judgement.Validity.Any(note => note.Code == Incomplete);
}
