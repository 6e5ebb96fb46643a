using System.CommandLine;

namespace LoggerBox.App.Console;

/// <summary>The work order.</summary>
internal static class JobVerb
{
    public static Command Declare(Terminal terminal) => new("job", Messages.JobVerb)
    {
        JobNewVerb.Declare(terminal),
        Show(terminal),
        Add(terminal),
        Close(terminal),
    };

    private static Command Show(Terminal terminal)
    {
        var job = JobArgument();
        var archive = SharedOptions.Archive();
        var json = SharedOptions.Json();
        var verb = new Command("show", Messages.JobShowVerb) { job, archive, json };
        verb.SetAction(line => Unbuilt.Run("job show"));
        return verb;
    }

    private static Command Add(Terminal terminal)
    {
        var job = JobArgument();
        var sessions = new Argument<string[]>("SESSION") { Description = Messages.SessionArgument, Arity = ArgumentArity.OneOrMore };
        var archive = SharedOptions.Archive();
        var verb = new Command("add", Messages.JobAddVerb) { job, sessions, archive };
        verb.SetAction(line => Unbuilt.Run("job add"));
        return verb;
    }

    private static Command Close(Terminal terminal)
    {
        var job = JobArgument();
        var archive = SharedOptions.Archive();
        var verb = new Command("close", Messages.JobCloseVerb) { job, archive };
        verb.SetAction(line => Unbuilt.Run("job close"));
        return verb;
    }

    private static Argument<string> JobArgument() => new("JOB") { Description = Messages.JobArgument };
}
