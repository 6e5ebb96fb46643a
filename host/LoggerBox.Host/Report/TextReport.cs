using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report;

/// <summary>The judgement for a terminal: what it comes to, what to do next, then the readings behind it.</summary>
public sealed class TextReport
{
    private const int Width = 96;
    private const int LabelWidth = 18;

    // A screen is read standing, the report sitting.
    private const int MostReasonsFor = 6;
    private const int MostReasonsAgainst = 3;

    private readonly TextWriter output;
    private readonly bool colour;

    public TextReport(TextWriter output, bool colour)
    {
        this.output = output;
        this.colour = colour;
    }

    public void Write(ReportDocument report)
    {
        ArgumentNullException.ThrowIfNull(report);
        Judgement judgement = report.Judgement;
        Wrap("", "  ", $"{report.Title}: {ReportWords.Truck(report)}");
        string version = judgement.SheetVersion.Length == 0 ? "" : $", version {judgement.SheetVersion}";
        Wrap("", "  ", $"Data sheet {judgement.SheetName}{version}{(judgement.SheetSource.Length == 0 ? "" : " (" + judgement.SheetSource + ")")}");
        WriteRelease(report.Release);
        output.WriteLine();
        output.WriteLine(Paint(ColourOf(judgement), "==> " + PlainText.Of(Outcome.Headline(judgement))));
        foreach (string line in ReportWords.Outcome(judgement).Lines)
        {
            Wrap("    ", "    ", line);
        }

        WriteSections(report.Front.Take(1));
        WriteSuspects(judgement);
        WriteReadings(judgement);
        WriteEngagements(judgement);
        WriteComparison(report.Comparison);
        WriteStallHeats(judgement);
        WriteSections(report.Front.Skip(1));
        WriteNotes(judgement);
        WriteNotCovered(judgement);
        output.WriteLine();
        Wrap("", "", "Suspects, not culprits: the truck's own manual comes first. Chock the wheels before a stall, engine off before a hose is touched, hot oil burns.");
    }

    private void WriteRelease(ReleaseNote? release)
    {
        if (release is null)
        {
            return;
        }

        output.WriteLine(Paint(release.IsReleased ? "1" : "1;31", PlainText.Of(release.Headline)));
        if (release.Detail.Length > 0)
        {
            Wrap("    ", "    ", release.Detail);
        }
    }

    /// <summary>What was written down; on a screen nobody fills in blanks.</summary>
    private void WriteSections(IEnumerable<ReportSection> sections)
    {
        foreach (ReportSection section in sections.Where(section => section.Facts.Any(fact => !string.IsNullOrEmpty(fact.Value))))
        {
            Heading(section.Heading.ToUpperInvariant());
            foreach (ReportFact fact in section.Facts.Where(fact => !string.IsNullOrEmpty(fact.Value)))
            {
                Wrap($"   {fact.Label.PadRight(LabelWidth)} ", new string(' ', LabelWidth + 4), fact.Value!);
            }
        }
    }

    private void WriteComparison(ReportComparison? comparison)
    {
        if (comparison is null)
        {
            return;
        }

        Heading("BEFORE AND AFTER THE REPAIR: " + comparison.Headline);
        var table = new TextTable("lrrrrll");
        table.Add("", "before", "after", "change", "±", "", "");
        foreach (ReportChange row in comparison.Telling)
        {
            table.Add(
                ReportWords.Place(row), ReportWords.Number(row.Before, row.Unit), ReportWords.NumberWithUnit(row.After, row.Unit), ReportWords.Signed(row.Change, row.Unit),
                ReportWords.Number(row.Uncertainty, row.Unit), row.Said, row.Verdicts);
        }

        table.WriteTo(output, "   ");
        output.WriteLine("   The others are in the report, and in `compare`.");
    }

    private void WriteSuspects(Judgement judgement)
    {
        if (judgement.Suspects.Count == 0)
        {
            return;
        }

        Heading("SUSPECTS");
        foreach (Suspect suspect in judgement.Suspects.OrderBy(suspect => suspect.Rank))
        {
            output.WriteLine($" {suspect.Rank}. {Paint("1", PlainText.Of(CauseWords.Of(suspect.Code)))}  [{PlainText.Of(suspect.Code)}]");
            WriteReasons("+", suspect.For, MostReasonsFor);
            WriteReasons("-", suspect.Against, MostReasonsAgainst);
            Wrap("    next: ", "          ", suspect.Next);
        }
    }

    private void WriteReasons(string sign, IReadOnlyList<string> reasons, int most)
    {
        foreach (string reason in reasons.Take(most))
        {
            Wrap($"    {sign} ", "      ", reason);
        }

        if (reasons.Count > most)
        {
            output.WriteLine($"    {sign} and {reasons.Count - most} more, see the report");
        }
    }

    private void WriteReadings(Judgement judgement)
    {
        Heading("READINGS");
        var table = new TextTable("lrrlrl");
        table.Add("", "measured", "±", "", "limit", "");
        foreach (IGrouping<string, ReadingRow> step in ReadingTable.Of(judgement).GroupBy(row => row.Step))
        {
            table.Add(" " + StepWords.Of(step.Key));
            foreach (ReadingRow row in step)
            {
                table.Add(
                    Words.Quantity(row.Quantity),
                    row.Value is double value ? Figure.Of(value, row.Unit) : "-",
                    row.Uncertainty is double uncertainty ? Figure.Of(uncertainty, row.Unit) : "",
                    Figure.Unit(row.Unit),
                    Figure.Limit(row.Min, row.Max, row.Unit),
                    row.Verdict is Verdict verdict ? Spoken(verdict) : "recorded");
            }
        }

        table.WriteTo(output, "   ");
    }

    private void WriteEngagements(Judgement judgement)
    {
        if (judgement.Engagements.Count == 0)
        {
            return;
        }

        Heading("CLUTCH ENGAGEMENTS");
        var table = new TextTable("lrrrrr");
        table.Add("", "at s", "fill s", "rise s", "total s", "overshoot %");
        foreach (JudgedEngagement engagement in judgement.Engagements)
        {
            table.Add(
                ReportWords.Engaged(engagement),
                Figure.Seconds(engagement.StartSeconds),
                Number(engagement.FillSeconds, "F2"),
                Number(engagement.RiseSeconds, "F2"),
                Number(engagement.TotalSeconds, "F2"),
                Number(engagement.OvershootPercent, "F0"));
        }

        table.WriteTo(output, "   ");
    }

    private void WriteStallHeats(Judgement judgement)
    {
        if (judgement.StallHeats.Count == 0)
        {
            return;
        }

        Heading("HEAT OF THE STALLS (from the sheet's converter; not judged)");
        foreach (StallHeat heat in judgement.StallHeats)
        {
            string rise = heat.RiseKelvin is double kelvin && heat.RiseUncertainty is double within && heat.WaitSeconds is double wait
                ? FormattableString.Invariant($"; oil {kelvin:F0} ± {within:F0} °C warmer on average, more in the converter; about {wait / 60:F0} min in neutral to lose it")
                : "";
            Wrap("   ", "     ", FormattableString.Invariant(
                $"{StepWords.Of(heat.Gear)} at {heat.StartSeconds:F0} s: {heat.PowerWatts / 1000:F1} ± {heat.PowerUncertainty / 1000:F1} kW into the oil for {heat.DurationSeconds:F1} s{rise}."));
        }
    }

    private void WriteNotes(Judgement judgement)
    {
        if (judgement.Validity.Count == 0)
        {
            return;
        }

        Heading("ABOUT THE MEASUREMENT");
        foreach (ValidityNote note in judgement.Validity.OrderBy(note => note.Effect == ValidityEffect.Note))
        {
            string step = note.Step == Step.None ? "" : StepWords.Of(note.Step) + ": ";
            Wrap(note.Effect == ValidityEffect.Void ? " VOID  " : " note  ", "       ", step + note.Text);
        }
    }

    private void WriteNotCovered(Judgement judgement)
    {
        Heading("NOT COVERED BY THIS TEST");
        foreach (NotCovered fault in judgement.NotCovered)
        {
            Wrap(" - ", "   ", $"{CauseWords.Of(fault.Code)}: {fault.Next}");
        }
    }

    private void Heading(string text)
    {
        output.WriteLine();
        output.WriteLine(Paint("1", PlainText.Of(text)));
    }

    private void Wrap(string first, string next, string text)
    {
        string line = first;
        foreach (string word in PlainText.Of(text).Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length + word.Length > Width && line.Length > next.Length)
            {
                output.WriteLine(line.TrimEnd());
                line = next;
            }

            line += word + " ";
        }

        output.WriteLine(line.TrimEnd());
    }

    private string Spoken(Verdict verdict)
    {
        string code = VerdictWords.IsOutside(verdict) ? "1;31" : VerdictWords.IsClose(verdict) ? "33" : verdict == Verdict.In ? "32" : "2";
        return Paint(code, VerdictWords.Symbol(verdict) + " " + VerdictWords.Word(verdict));
    }

    private static string ColourOf(Judgement judgement) => judgement.Suspects.Count > 0 ? "1;31" : Outcome.IsOpen(judgement) ? "1;33" : "1;32";

    private string Paint(string code, string text) => colour ? $"\e[{code}m{text}\e[0m" : text;

    private static string Number(double? value, string format) => value?.ToString(format, CultureInfo.InvariantCulture) ?? "-";
}
