using System;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.Judging;

namespace LoggerBox.Host.Report.Html;

/// <summary>Which truck, whose complaint, measured when; and the one sentence that it comes to.</summary>
internal static class HeadSection
{
    // The complaint is the customer's own sentence and wants the whole width.
    private const int LongFact = 26;

    public static void Write(Markup page, ReportDocument report)
    {
        page.Open("div", "top").Open("div");
        page.Element("div", "Lack-of-power test", "soft");
        page.Element("h1", report.Judgement.Truck.Length == 0 ? "Truck not named" : report.Judgement.Truck);
        page.Close("div").Open("div", "right small");
        page.Element("div", report.Title);
        page.Element("div", "Report of " + Moment(report.Made));
        page.Close("div").Close("div");

        WriteOutcome(page, report.Judgement);
        WriteFacts(page, report);
    }

    /// <summary>UTC with the shop's own clock beside it: who reads the paper lives by the second, the archive by the first.</summary>
    public static string Moment(DateTimeOffset time)
    {
        string local = time.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
        string offset = time.Offset.ToString(time.Offset < TimeSpan.Zero ? @"\-hh\:mm" : @"\+hh\:mm", CultureInfo.InvariantCulture);
        string utc = time.UtcDateTime.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
        return time.Offset == TimeSpan.Zero ? utc + " UTC" : $"{local} (UTC{offset}; {utc} UTC)";
    }

    private static void WriteOutcome(Markup page, Judgement judgement)
    {
        bool open = Outcome.IsIncomplete(judgement) || !Outcome.IsJudged(judgement) || judgement.Checks.Any(check => VerdictWords.IsOutside(check.Verdict));
        string look = judgement.Suspects.Count > 0 ? "out" : open ? "open" : "in";
        string symbol = judgement.Suspects.Count > 0 ? "▶ " : open ? "△ " : "✓ ";
        page.Open("div", "outcome " + look);
        page.Element("strong", symbol + Outcome.Headline(judgement));
        page.Element("div", Outcome.Explanation(judgement));
        if (judgement.Suspects.Count > 0)
        {
            page.Element("div", "Do first: " + judgement.Suspects.OrderBy(suspect => suspect.Rank).First().Next);
        }

        page.Close("div");
    }

    private static void WriteFacts(Markup page, ReportDocument report)
    {
        page.Open("div", "facts");
        foreach (ReportFact fact in report.Facts)
        {
            WriteFact(page, fact.Label, fact.Value ?? "");
        }

        foreach (ReportRecording recording in report.Recordings)
        {
            string started = recording.StartedUtc is DateTimeOffset utc ? Moment(utc.ToOffset(recording.ShopOffset)) : "undated: the logger's clock was not set";
            WriteFact(page, "Recorded", report.Recordings.Count == 1 ? started : recording.Name + ": " + started);
        }

        string source = report.Judgement.SheetSource;
        WriteFact(page, "Data sheet", report.Judgement.SheetName + (source.Length == 0 ? "" : " — " + source));
        page.Close("div");
    }

    private static void WriteFact(Markup page, string label, string value)
    {
        page.Open("div", value.Length > LongFact ? "wide" : null);
        page.Element("span", label).Element("span", value).Close("div");
    }
}
