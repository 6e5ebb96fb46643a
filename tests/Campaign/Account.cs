using System.Collections.Generic;
using System.IO;
using System.Linq;

namespace LoggerBox.Campaign;

/// <summary>The campaign's tables: confusion, the severity from which on each cause shows, every miss, wrong verdicts, the shares.</summary>
internal static class Account
{
    public static void Write(Tally tally, TextWriter writer)
    {
        WriteConfusion(tally, writer);
        WriteOnset(tally, writer);
        foreach (Outcome missed in tally.Missed)
        {
            writer.WriteLine($"  missed: {missed.Truck}: {Named(missed)}; out of limits {missed.Visibility.OutOfLimits}, {missed.Visibility.DifferenceName} {missed.Visibility.Difference:0.000}");
        }

        foreach (Outcome accused in tally.Accused.Concat(tally.Misled))
        {
            writer.WriteLine($"  accused: {accused.Truck}: {Named(accused)}; {string.Join(" ", accused.Suspects[0].For)}");
        }

        foreach (var (truck, check, truth) in tally.Wrong)
        {
            writer.WriteLine($"  wrong: {truck}: {check.Step} {check.Quantity} {check.Value:0.00} +- {check.Uncertainty:0.00}, truly {truth:0.00}, limits {check.Min} to {check.Max}, {check.Verdict}");
        }

        writer.WriteLine($"visible {tally.Visible.Count} of {tally.Faulty.Count}; in the first rank {Share(tally.Visible.Count - tally.Missed.Count(), tally.Visible.Count)}, among the first three {Share(tally.Visible.Count - tally.FarMissed.Count(), tally.Visible.Count)}");
        writer.WriteLine($"healthy {tally.Healthy.Count}, accused {Share(tally.Accused.Count(), tally.Healthy.Count)}; nothing to be seen and another cause named: {tally.Misled.Count()} of {tally.Faulty.Count - tally.Visible.Count}");
        writer.WriteLine($"verdicts in, low or high: {tally.Verdicts.Count}, wrong {tally.Wrong.Count}");
    }

    private static void WriteConfusion(Tally tally, TextWriter writer)
    {
        writer.WriteLine("cause                      visible  first rank  who stood there instead");
        foreach (var group in tally.Visible.GroupBy(outcome => outcome.Truck.Cause.Code).OrderBy(group => group.Key))
        {
            var instead = group.Where(outcome => outcome.Rank != 1).GroupBy(outcome => outcome.First).Select(other => $"{other.Key} {other.Count()}");
            writer.WriteLine($"  {group.Key,-26} {group.Count(),5} {Share(group.Count(outcome => outcome.Rank == 1), group.Count()),11}  {string.Join(", ", instead)}");
        }
    }

    private static void WriteOnset(Tally tally, TextWriter writer)
    {
        writer.WriteLine("severity (0 just begins, 1 gross): mildest that shows, gravest that does not");
        foreach (var group in tally.Faulty.Where(outcome => !outcome.Truck.Cause.IsAllOrNothing).GroupBy(outcome => outcome.Truck.Cause.Code).OrderBy(group => group.Key))
        {
            double first = group.Where(outcome => outcome.Visibility.IsVisible).Select(outcome => outcome.Truck.Severity).DefaultIfEmpty(double.NaN).Min();
            double hidden = group.Where(outcome => !outcome.Visibility.IsVisible).Select(outcome => outcome.Truck.Severity).DefaultIfEmpty(0).Max();
            writer.WriteLine($"  {group.Key,-26} {first:0.00} {hidden:0.00}");
        }
    }

    private static string Named(Outcome outcome) =>
        outcome.Suspects.Count == 0 ? "nobody named" : string.Join(", ", outcome.Suspects.Select(suspect => $"{suspect.Rank} {suspect.Code}"));

    private static string Share(int part, int whole) => whole == 0 ? "none" : $"{100.0 * part / whole:0.0} %";
}
