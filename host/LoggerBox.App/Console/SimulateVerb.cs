using System.CommandLine;
using System.Threading;

namespace LoggerBox.App.Console;

/// <summary>The virtual logger and truck alone, as a process that one can connect to.</summary>
internal static class SimulateVerb
{
    public static Command Declare(Terminal terminal, CancellationToken stop)
    {
        var cause = new Option<string>("--cause") { Description = Messages.CauseOption, HelpName = "CODE", DefaultValueFactory = _ => "healthy" };
        var seed = new Option<int>("--seed") { Description = Messages.SeedOption, HelpName = "N", DefaultValueFactory = _ => 1 };
        var tcp = new Option<bool>("--tcp") { Description = Messages.TcpOption };
        var store = new Option<string?>("--store") { Description = Messages.StoreOption, HelpName = "FILE" };
        var link = new Option<string?>("--link") { Description = Messages.LinkOption, HelpName = "PATH" };
        var speed = new Option<string>("--speed") { Description = Messages.SpeedOption, HelpName = "fast|real", DefaultValueFactory = _ => "fast" };
        speed.AcceptOnlyFromAmong("fast", "real");
        var verb = new Command("simulate", Messages.SimulateVerb) { cause, seed, tcp, store, link, speed };
        verb.SetAction(line => Unbuilt.Run("simulate"));
        return verb;
    }
}
