using System;
using System.CommandLine;
using LoggerBox.Host.Archive;

namespace LoggerBox.App.Console;

/// <summary>The work order.</summary>
internal static class JobVerb
{
    public static Command Declare(Terminal terminal) => new("job", Messages.JobVerb)
    {
        JobNewVerb.Declare(terminal),
        JobShowVerb.Declare(terminal),
        Add(terminal),
        Close(terminal),
    };

    public static Argument<string> JobArgument() => new("JOB") { Description = Messages.JobArgument };

    private static Command Add(Terminal terminal)
    {
        var job = JobArgument();
        var sessions = new Argument<string[]>("SESSION") { Description = Messages.SessionArgument, Arity = ArgumentArity.OneOrMore };
        var archive = SharedOptions.Archive();
        var verb = new Command("add", Messages.JobAddVerb) { job, sessions, archive };
        verb.SetAction(line =>
        {
            using ArchiveFile file = ArchiveFile.OpenExisting(line.GetValue(archive) ?? ArchiveFile.DefaultPath);
            file.Jobs.AddSessions(line.GetRequiredValue(job), line.GetRequiredValue(sessions), DateTimeOffset.Now);
            Job there = file.Jobs.Load(line.GetRequiredValue(job));
            terminal.Out.WriteLine(Messages.JobHolds(there.Id, there.SessionIds));
            return CommandLine.Done;
        });
        return verb;
    }

    private static Command Close(Terminal terminal)
    {
        var job = JobArgument();
        var archive = SharedOptions.Archive();
        var verb = new Command("close", Messages.JobCloseVerb) { job, archive };
        verb.SetAction(line =>
        {
            using ArchiveFile file = ArchiveFile.OpenExisting(line.GetValue(archive) ?? ArchiveFile.DefaultPath);
            file.Jobs.Close(line.GetRequiredValue(job), DateTimeOffset.Now);
            terminal.Out.WriteLine(Messages.JobClosed(file.Jobs.Load(line.GetRequiredValue(job)).Id));
            return CommandLine.Done;
        });
        return verb;
    }
}
