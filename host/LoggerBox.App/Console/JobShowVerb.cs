using System.CommandLine;
using System.Linq;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Report;
using LoggerBox.Host.Subjects;

namespace LoggerBox.App.Console;

/// <summary>Shows one work order, or lists all.</summary>
internal static class JobShowVerb
{
    public static Command Declare(Terminal terminal)
    {
        var job = JobVerb.JobArgument();
        job.Arity = ArgumentArity.ZeroOrOne;
        var archive = SharedOptions.Archive();
        var json = SharedOptions.Json();
        var verb = new Command("show", Messages.JobShowVerb) { job, archive, json };
        verb.SetAction(line =>
        {
            using ArchiveFile file = ArchiveFile.OpenForReading(line.GetValue(archive) ?? ArchiveFile.DefaultPath);
            if (line.GetValue(job) is string id)
            {
                Print(terminal, file, file.Jobs.Load(id), line.GetValue(json));
            }
            else
            {
                List(terminal, file, line.GetValue(json));
            }

            return CommandLine.Done;
        });
        return verb;
    }

    public static void Print(Terminal terminal, ArchiveFile file, Job job, bool json)
    {
        if (json)
        {
            JsonText.Write(terminal.Out, writer => ListingJson.Job(writer, job));
            return;
        }

        terminal.Out.WriteLine(Messages.JobLine(job.Id, job.Closed is not null));
        var table = new TextTable("ll");
        foreach (ReportFact fact in JobWords.Facts(job).Concat(JobWords.Bookkeeping(job)).Where(fact => !string.IsNullOrEmpty(fact.Value)))
        {
            table.Add(fact.Label, PlainText.Of(fact.Value!));
        }

        table.WriteTo(terminal.Out);
        if (job.SessionIds.Count == 0)
        {
            terminal.Out.WriteLine(ArchivedSubjects.Empty(job.Id));
            return;
        }

        SessionsVerb.Print(terminal, file, [.. job.SessionIds.Select(file.Sessions.Find)]);
    }

    private static void List(Terminal terminal, ArchiveFile file, bool json)
    {
        if (json)
        {
            ListingJson.WriteArray(terminal.Out, file.Jobs.All(), ListingJson.Job);
            return;
        }

        var table = new TextTable("lllll");
        table.Add("job", "opened", "truck", "serial", "sessions");
        foreach (Job job in file.Jobs.All())
        {
            table.Add(job.Id, JobWords.Moment(job.Opened), PlainText.Of(job.Details.Truck), PlainText.Of(job.Details.Serial), string.Join(' ', job.SessionIds));
        }

        table.WriteTo(terminal.Out, "");
    }
}
