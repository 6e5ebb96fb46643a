using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;

namespace LoggerBox.Campaign;

/// <summary>The campaign's tables: shares, confusion, the severity from which on each cause shows, wrong verdicts.</summary>
internal sealed class Account(IReadOnlyList<Outcome> outcomes)
{
    public void Write(TextWriter writer, bool verbose)
    {
        ArgumentNullException.ThrowIfNull(writer);
        List<Outcome> faulty = [.. outcomes.Where(outcome => !outcome.Truck.IsHealthy)];
        List<Outcome> visible = [.. faulty.Where(outcome => outcome.Visibility.IsVisible)];
        List<Outcome> healthy = [.. outcomes.Where(outcome => outcome.Truck.IsHealthy)];
        WriteConfusion(writer, visible);
        WriteOnset(writer, faulty);
        foreach (Outcome missed in verbose ? faulty : visible.Where(outcome => outcome.Rank != 1))
        {
            writer.WriteLine($"  {missed.Truck}: rank {missed.Rank}; {string.Join(", ", missed.Suspects.Select(s => $"{s.Rank} {s.Code}"))}; limits {missed.Visibility.OutOfLimits}, {missed.Visibility.DifferenceName} {missed.Visibility.Difference:0.000}");
        }

        foreach (Outcome accused in healthy.Where(outcome => outcome.Suspects.Count > 0))
        {
            writer.WriteLine($"  accused: {accused.Truck}: {string.Join(", ", accused.Suspects.Select(s => $"{s.Rank} {s.Code} ({string.Join(" ", s.For)})"))}");
        }

        foreach (Outcome misled in faulty.Where(o => !o.Visibility.IsVisible && o.Suspects.Count > 0 && o.Rank != 1))
        {
            writer.WriteLine($"  misled: {misled.Truck}: {string.Join(", ", misled.Suspects.Select(s => $"{s.Rank} {s.Code} ({string.Join(" ", s.For)})"))}");
        }

        WriteVerdicts(writer);
        writer.WriteLine($"visible: {visible.Count} of {faulty.Count}; first rank {Share(visible.Count(o => o.Rank == 1), visible.Count)}; first three {Share(visible.Count(o => o.Place is >= 1 and <= 3), visible.Count)}");
        writer.WriteLine($"healthy: {healthy.Count}; accused {Share(healthy.Count(o => o.Suspects.Count > 0), healthy.Count)}; not visible and accused of another cause: {faulty.Count(o => !o.Visibility.IsVisible && o.Suspects.Count > 0 && o.Rank != 1)} of {faulty.Count - visible.Count}");
    }

    private void WriteVerdicts(TextWriter writer)
    {
        var verdicts = outcomes.SelectMany(outcome => outcome.PlainVerdicts.Select(pair => (outcome, pair))).ToList();
        var wrong = verdicts.Where(item => Outcome.IsWrong(item.pair)).ToList();
        foreach (var (outcome, pair) in wrong.Take(30))
        {
            writer.WriteLine($"  wrong: {outcome.Truck}: {pair.Check.Step} {pair.Check.Quantity} {pair.Check.Value:0.00} +- {pair.Check.Uncertainty:0.00}, truly {pair.True:0.00}, limits {pair.Check.Min} to {pair.Check.Max}, {pair.Check.Verdict}");
        }

        writer.WriteLine($"verdicts in, low or high: {verdicts.Count}, wrong {wrong.Count}");
    }

    private static void WriteConfusion(TextWriter writer, List<Outcome> visible)
    {
        writer.WriteLine("cause, visible: first rank; who stood there instead");
        foreach (var group in visible.GroupBy(outcome => outcome.Truck.Cause.Code))
        {
            var instead = group.Where(outcome => outcome.Rank != 1).GroupBy(outcome => outcome.First).Select(other => $"{other.Key} {other.Count()}");
            writer.WriteLine($"  {group.Key,-26} {group.Count(),4} {Share(group.Count(outcome => outcome.Rank == 1), group.Count()),8}  {string.Join(", ", instead)}");
        }
    }

    private static void WriteOnset(TextWriter writer, List<Outcome> faulty)
    {
        writer.WriteLine("severity from which on it shows: mildest seen, mildest from which on every one shows");
        foreach (var group in faulty.Where(outcome => !outcome.Truck.Cause.IsAllOrNothing).GroupBy(outcome => outcome.Truck.Cause.Code))
        {
            double first = group.Where(o => o.Visibility.IsVisible).Select(o => o.Truck.Severity).DefaultIfEmpty(double.NaN).Min();
            double hidden = group.Where(o => !o.Visibility.IsVisible).Select(o => o.Truck.Severity).DefaultIfEmpty(0).Max();
            writer.WriteLine($"  {group.Key,-26} {first:0.00} {hidden:0.00}");
        }
    }

    private static string Share(int part, int whole) => whole == 0 ? "none" : $"{100.0 * part / whole:0.0} %";
}
