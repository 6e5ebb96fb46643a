using System.CommandLine;
using System.Threading;

namespace LoggerBox.App.Console;

/// <summary>The logger's plan, made from a data sheet.</summary>
internal static class PlanVerb
{
    public static Command Declare(Terminal terminal, CancellationToken stop)
    {
        var file = new Argument<string>("FILE") { Description = Messages.SheetArgument };
        var port = SharedOptions.Port();
        var send = new Command("send", Messages.PlanSendVerb) { file, port };
        send.SetAction(line => Unbuilt.Run("plan send"));
        return new Command("plan", Messages.PlanVerb) { send };
    }
}
