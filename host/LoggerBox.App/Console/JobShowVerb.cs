using System;
using System.CommandLine;
using System.Linq;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Releasing;
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
            JsonText.Write(terminal.Out, writer => JobJson.Write(writer, job));
            return;
        }

        ReleaseNote release = ReleaseWords.Of(job);
        terminal.Out.WriteLine(Messages.JobLine(job.Id, job.Closed is not null, PlainText.Of(release.Headline)));
        var table = new TextTable("ll");
        foreach (ReportFact fact in JobWords.Facts(job).Concat(JobWords.Bookkeeping(job)).Concat(JobWords.Corrections(job)).Where(fact => !string.IsNullOrEmpty(fact.Value)))
        {
            table.Add(fact.Label, PlainText.Of(fact.Value!));
        }

        table.WriteTo(terminal.Out);
        WriteGates(terminal, job);
        if (job.SessionIds.Count == 0)
        {
            terminal.Out.WriteLine(ArchivedSubjects.Empty(job.Id));
            return;
        }

        SessionsVerb.Print(terminal, file, [.. job.SessionIds.Select(file.Sessions.Find)]);
    }

    private static void WriteGates(Terminal terminal, Job job)
    {
        foreach (GateStage stage in Enum.GetValues<GateStage>())
        {
            terminal.Out.WriteLine(ReleaseWords.Of(stage));
            var table = new TextTable("llll");
            foreach (GateState state in job.Release.Gates.Where(state => state.Gate.Stage == stage))
            {
                table.Add(state.Tick is null ? "open" : "✓", state.Gate.Code, state.Gate.Text, PlainText.Of(ReleaseWords.Of(job, state)));
            }

            table.WriteTo(terminal.Out);
        }
    }

    private static void List(Terminal terminal, ArchiveFile file, bool json)
    {
        if (json)
        {
            ListingJson.WriteArray(terminal.Out, file.Jobs.All(), JobJson.Write);
            return;
        }

        var table = new TextTable("llllll");
        table.Add("job", "opened", "truck", "serial", "state", "sessions");
        foreach (Job job in file.Jobs.All())
        {
            table.Add(job.Id, JobWords.Moment(job.Opened), PlainText.Of(job.Details.Truck), PlainText.Of(job.Details.Serial), ReleaseWords.State(job), string.Join(' ', job.SessionIds));
        }

        table.WriteTo(terminal.Out, "");
    }
}
