using System;
using System.CommandLine;
using LoggerBox.Host;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Subjects;

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
            if (!path.EndsWith(".html", StringComparison.OrdinalIgnoreCase))
            {
                throw new UserErrorException(Messages.ReportEnding(path), usage: true);
            }

            (Subject subject, Judgement judgement) = reading.Judged(line);
            WholeFile.Write(path, HtmlReport.Render(subject.Report(judgement, DateTimeOffset.Now)));
            terminal.Out.WriteLine(Messages.Wrote(path));
            return CommandLine.Done;
        });
        return verb;
    }
}
