using System.CommandLine;
using System.Threading;

namespace LoggerBox.App.Console;

/// <summary>The whole job on an invented truck, over a real serial line, on virtual time.</summary>
internal static class DemoVerb
{
    public static Command Declare(Terminal terminal, CancellationToken stop)
    {
        var cause = new Option<string>("--cause") { Description = Messages.CauseOption, HelpName = "CODE", DefaultValueFactory = _ => "healthy" };
        var seed = new Option<int>("--seed") { Description = Messages.SeedOption, HelpName = "N", DefaultValueFactory = _ => 1 };
        var folder = new Option<string>("--out") { Description = Messages.DemoOutOption, HelpName = "DIR", DefaultValueFactory = _ => "loggerbox-demo" };
        var unit = SharedOptions.Unit();
        var verb = new Command("demo", Messages.DemoVerb) { cause, seed, folder, unit };
        verb.SetAction(line => Unbuilt.Run("demo"));
        return verb;
    }
}
