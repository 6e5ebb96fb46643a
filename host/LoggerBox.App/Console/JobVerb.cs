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
        JobCorrectVerb.Declare(terminal),
        JobGateVerb.Declare(terminal),
        JobCloseVerb.Declare(terminal),
    };

    public static Argument<string> JobArgument() => new("JOB") { Description = Messages.JobArgument };

    private static Command Add(Terminal terminal)
    {
        var job = JobArgument();
        var sessions = new Argument<string[]>("SESSION") { Description = Messages.SessionArgument, Arity = ArgumentArity.OneOrMore };
        var role = new Option<string?>("--as") { Description = Messages.RoleOption, HelpName = "before|after" };
        role.AcceptOnlyFromAmong("before", "after");
        var archive = SharedOptions.Archive();
        var verb = new Command("add", Messages.JobAddVerb) { job, sessions, role, archive };
        verb.SetAction(line =>
        {
            using ArchiveFile file = ArchiveFile.OpenExisting(line.GetValue(archive) ?? ArchiveFile.DefaultPath);
            file.Jobs.AddSessions(line.GetRequiredValue(job), line.GetRequiredValue(sessions), DateTimeOffset.Now, RoleOf(line.GetValue(role)));
            Job there = file.Jobs.Load(line.GetRequiredValue(job));
            terminal.Out.WriteLine(Messages.JobHolds(there.Id, there.SessionIds));
            return CommandLine.Done;
        });
        return verb;
    }

    private static SessionRole RoleOf(string? word) => word switch
    {
        "before" => SessionRole.Before,
        "after" => SessionRole.After,
        _ => SessionRole.Any,
    };
}
