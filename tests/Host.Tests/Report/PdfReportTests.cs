using System;
using System.IO;
using System.Linq;
using System.Text;
using System.Text.RegularExpressions;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Pdf;
using LoggerBox.Host.Tests.Report.Card;
using PdfSharp.Pdf;
using PdfSharp.Pdf.IO;
using Xunit;

namespace LoggerBox.Host.Tests.Report;

/// <summary>The sheets of paper, read back by other programs: the library's own reader, and Poppler's pdftotext where it is installed.</summary>
public class PdfReportTests
{
    private const string Hostile = "\u202Eevil\u0000 (x) \\) /Type <script> ../../x";

    [Fact]
    public void It_is_a_document_of_a_few_sheets_with_its_own_fonts_and_nothing_else()
    {
        byte[] sheets = PdfReport.Render(SampleReport.Document());
        using PdfDocument document = PdfReader.Open(new MemoryStream(sheets), PdfDocumentOpenMode.Import);
        Assert.InRange(document.PageCount, 2, 5);
        Assert.Equal("Sample truck: lack-of-power test, job 12", document.Info.Title);
        Assert.All(document.Pages.Cast<PdfPage>(), page => Assert.Equal((595, 842), ((int)Math.Round(page.Width.Point), (int)Math.Round(page.Height.Point))));

        string names = Encoding.Latin1.GetString(sheets);
        Assert.Matches("/FontFile2", names);
        Assert.DoesNotMatch("/JavaScript|/Launch|/URI|/EmbeddedFile|/OpenAction", names);
    }

    [Fact]
    public void Whatever_anyone_wrote_stays_text()
    {
        byte[] sheets = PdfReport.Render(SampleReport.Document(Hostile));
        using PdfDocument document = PdfReader.Open(new MemoryStream(sheets), PdfDocumentOpenMode.Import);
        Assert.InRange(document.PageCount, 2, 6);
        Assert.DoesNotContain('\u202E', document.Info.Title);
        Assert.DoesNotContain('\0', document.Info.Title);
    }

    [PopplerFact]
    public void A_word_that_is_wider_than_the_sheet_is_broken_and_nothing_of_it_lost()
    {
        ReportDocument report = SampleReport.Document();
        string text = PaperWords.Text(PdfReport.Render(report with { Front = [new ReportSection("Complaint", [new ReportFact("Complaint", new string('#', 400))])] }));
        Assert.Equal(400, text.Count(letter => letter == '#'));
    }

    /// <summary>A word as long as a book is broken line by line, each at the cost of a line: where a line costs the whole word, this test does not end.</summary>
    [PopplerFact]
    public void A_word_as_long_as_a_book_takes_as_many_lines_as_it_needs()
    {
        const int letters = 200_000;
        ReportDocument report = SampleReport.Document();
        string text = PaperWords.Text(PdfReport.Render(report with { Front = [new ReportSection("Complaint", [new ReportFact("Complaint", new string('#', letters))])] }));

        // The first sheet's beginning of it, and all of it at the end.
        Assert.InRange(text.Count(letter => letter == '#'), letters + 400, letters + 430);
        Assert.Equal(letters, text[text.IndexOf("infull", text.IndexOf("Instrumentanduncertainty", StringComparison.Ordinal), StringComparison.Ordinal)..].Count(letter => letter == '#'));
    }

    /// <summary>Whatever was written on the order, the lines to sign on stand under what is signed.</summary>
    [PopplerFact]
    public void The_signatures_stand_on_the_first_sheet()
    {
        string story = string.Concat(Enumerable.Repeat("weak ", 400));
        ReportDocument report = SampleReport.Document();
        ReportSection claim = new("Complaint, cause, correction", [new ReportFact("Complaint", story), new ReportFact("Cause found", story), new ReportFact("Correction", story)]);
        string first = PaperWords.FirstPage(PdfReport.Render(report with { Front = [claim, .. report.Front.Skip(1)] }));
        Assert.Contains("Customer,date", first, StringComparison.Ordinal);
        Assert.Contains("Cautions", first, StringComparison.Ordinal);
        Assert.Contains("▼LOW", first, StringComparison.Ordinal);
    }

    [PopplerFact]
    public void Every_hold_has_its_number_in_the_key_and_over_its_window_as_in_the_page()
    {
        string text = PaperWords.Text(PdfReport.Render(SampleReport.Crowded()));
        string[] steps = ["Idle,neutral", "Idle,forward", "Idle,reverse", "Fullpedal,noload", "Fullpedal,workrelief", "Stall,forward", "Stall,reverse", "Holdspeed,neutral"];
        Assert.Contains(string.Join("·", steps.Select((step, i) => $"{i + 1}{step}")), text, StringComparison.Ordinal);
        Assert.All(steps.Select((step, i) => $"{i + 1}{step},705rpm"), title => Assert.Contains(title, text, StringComparison.Ordinal));

        // Engine speed and main pressure, the two that were recorded: each has all the numbers.
        (_, var words) = PaperWords.Of(PdfReport.Render(SampleReport.Crowded()));
        Assert.All(Enumerable.Range(1, steps.Length), number => Assert.True(words.Count(word => word.Text == $"{number}" && word.Bottom - word.Top < 9) >= 2, $"{number}"));
    }

    [PopplerFact]
    public void It_says_what_the_judgement_says()
    {
        ReportDocument report = SampleReport.Document();
        string text = PaperWords.Text(PdfReport.Render(report));
        Judgement judgement = report.Judgement;
        string[] expected =
        [
            Outcome.Headline(judgement),
            Outcome.Explanation(judgement),
            report.Release!.Headline, report.Release.Detail,
            .. report.Front.SelectMany(section => section.Facts).Select(fact => fact.Value).OfType<string>(),
            .. report.Front.Select(section => section.Heading),
            report.Comparison!.Headline, .. report.Comparison.Notes, "+13.6", "▼ LOW → ▼ LOW",
            .. judgement.Suspects.SelectMany(suspect => suspect.For.Concat(suspect.Against).Append(suspect.Next)),
            .. judgement.Validity.Select(note => note.Text),
            .. judgement.NotCovered.SelectMany(fault => (string[])[fault.Text, fault.Next]),
            "▼ LOW", "▲ HIGH", "101.7 psi", "131.0 to 180.0",
            ReportWords.Cautions,
            ReportWords.Uncertainty,
            SampleReport.Fingerprint,
        ];
        Assert.All(expected, part => Assert.Contains(Plain(part), text, StringComparison.Ordinal));
    }

    /// <summary>Without spaces and line ends, which a sheet sets as it needs.</summary>
    private static string Plain(string text) => Regex.Replace(text, @"\s+", "");
}
