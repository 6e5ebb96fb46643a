using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.Comparing;

/// <summary>One reading before and after a repair. Pressures in the comparison's unit, speeds in rpm, times in seconds.</summary>
/// <param name="Before">Null where it was not taken then; so is <paramref name="After"/>.</param>
/// <param name="Change">After less before; null where either is missing.</param>
/// <param name="Uncertainty">
/// Of the change, expanded, 95.45 %: those of both readings, root sum of squares; null where one of them is not known. Two visits may be two
/// instruments, so nothing cancels.
/// </param>
public sealed record ReadingChange(
    string Step, string Quantity, string Unit, ReadingRow? Before, ReadingRow? After, double? Change, double? Uncertainty)
{
    /// <summary>Larger than its uncertainty; null where there is no change to tell of.</summary>
    public bool? IsReal => Change is { } change && Uncertainty is { } uncertainty ? Math.Abs(change) > uncertainty : null;
}

/// <summary>Two judgements of one truck, before and after a repair, reading by reading.</summary>
/// <param name="Gone">Suspects of before that are none after; <paramref name="Still"/> are both, <paramref name="New"/> only after.</param>
/// <param name="Notes">What makes the two less comparable, as sentences.</param>
public sealed record Comparison(
    Judgement Before,
    Judgement After,
    PressureUnit Unit,
    IReadOnlyList<ReadingChange> Readings,
    IReadOnlyList<string> Gone,
    IReadOnlyList<string> Still,
    IReadOnlyList<string> New,
    IReadOnlyList<string> Notes)
{
    /// <summary>Both must be in one pressure unit.</summary>
    /// <exception cref="ArgumentException">They are not.</exception>
    public static Comparison Of(Judgement before, Judgement after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        if (before.Unit != after.Unit)
        {
            throw new ArgumentException("Both judgements must be in one pressure unit.", nameof(after));
        }

        string[] then = [.. before.Suspects.OrderBy(suspect => suspect.Rank).Select(suspect => suspect.Code)];
        string[] now = [.. after.Suspects.OrderBy(suspect => suspect.Rank).Select(suspect => suspect.Code)];
        return new Comparison(
            before, after, before.Unit, Changes(before, after), [.. then.Except(now)], [.. then.Intersect(now)], [.. now.Except(then)], [.. Doubts(before, after)]);
    }

    private static List<ReadingChange> Changes(Judgement before, Judgement after)
    {
        ILookup<(string, string), ReadingRow> then = Rows(before);
        ILookup<(string, string), ReadingRow> now = Rows(after);
        return [.. ReadingTable.InOrder(then.Concat(now).SelectMany(rows => rows))
            .Select(row => (row.Step, row.Quantity))
            .Distinct()
            .Select(key => Change(Single(then[key]), Single(now[key])))
            .OfType<ReadingChange>()];
    }

    private static ILookup<(string, string), ReadingRow> Rows(Judgement judgement) =>
        ReadingTable.Of(judgement).Where(row => row.Value is not null).ToLookup(row => (row.Step, row.Quantity));

    /// <summary>Two holds in gear whose gear nobody knows cannot be matched with two others.</summary>
    private static ReadingRow? Single(IEnumerable<ReadingRow> rows) => rows.Count() == 1 ? rows.First() : null;

    private static ReadingChange? Change(ReadingRow? before, ReadingRow? after)
    {
        if ((before ?? after) is not { } either)
        {
            return null;
        }

        double? change = after?.Value - before?.Value;
        double? uncertainty = before?.Uncertainty is { } one && after?.Uncertainty is { } other ? Math.Sqrt((one * one) + (other * other)) : null;
        return new ReadingChange(either.Step, either.Quantity, either.Unit, before, after, change, uncertainty);
    }

    private static IEnumerable<string> Unmatched(Judgement judgement) =>
        Rows(judgement).Where(rows => rows.Count() > 1).Select(rows => $"{Words.Quantity(rows.Key.Item2)} ({StepWords.Of(rows.Key.Item1).ToLowerInvariant()})");

    private static string Version(Judgement judgement) => judgement.SheetVersion.Length == 0 ? "no file" : judgement.SheetVersion;

    private static IEnumerable<string> Doubts(Judgement before, Judgement after)
    {
        if (before.Truck != after.Truck)
        {
            yield return $"The data sheets name two trucks, \"{before.Truck}\" and \"{after.Truck}\": make sure that it is the same one.";
        }

        if (before.SheetName != after.SheetName)
        {
            yield return $"Before was judged by {before.SheetName}, after by {after.SheetName}: the limits may differ.";
        }
        else if (before.SheetVersion != after.SheetVersion)
        {
            yield return $"{before.SheetName} was changed in between (before {Version(before)}, after {Version(after)}): the limits may differ. Judge both with --sheet to compare by one.";
        }

        string[] gearless = [.. Unmatched(before).Union(Unmatched(after))];
        if (gearless.Length > 0)
        {
            yield return $"Not compared, because nobody knows in which gear it was: {string.Join(", ", gearless)}. Tag the gears or mark the steps; each report shows these readings.";
        }

        if (Outcome.IsIncomplete(after))
        {
            yield return "Not every step was measured after the repair: a suspect that is gone may only be out of sight.";
        }

        if (Outcome.IsIncomplete(before))
        {
            yield return "Not every step was measured before the repair.";
        }
    }
}
