using System;
using System.CommandLine;
using LoggerBox.Host;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Report.Pdf;

namespace LoggerBox.App.Console;

/// <summary>The printable report.</summary>
internal static class ReportVerb
{
    public static Command Declare(Terminal terminal)
    {
        var reading = new SubjectReading(terminal);
        var file = SharedOptions.OutFile(Messages.ReportOutOption);
        var verb = new Command("report", Messages.ReportVerb) { file };
        reading.AddTo(verb);
        verb.SetAction(line =>
        {
            string path = line.GetRequiredValue(file);
            bool isPdf = path.EndsWith(".pdf", StringComparison.OrdinalIgnoreCase);
            if (!isPdf && !path.EndsWith(".html", StringComparison.OrdinalIgnoreCase))
            {
                throw new UserErrorException(Messages.ReportEnding(path), usage: true);
            }

            ReportDocument report = reading.Reported(line);

            // Known long before the sheets are drawn, and what whoever waits wants to know.
            terminal.Out.WriteLine("==> " + PlainText.Of(Outcome.Headline(report.Judgement)));
            if (isPdf)
            {
                byte[] sheets = PdfReport.Render(report);
                WholeFile.Write(path, file => file.Write(sheets));
            }
            else
            {
                WholeFile.Write(path, HtmlReport.Render(report));
            }

            terminal.Out.WriteLine(Messages.Wrote(path));
            return CommandLine.Done;
        });
        return verb;
    }
}
