using System.CommandLine;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.App.Console;

/// <summary>The logger's plan, made from a data sheet.</summary>
internal static class PlanVerb
{
    public static Command Declare(Terminal terminal)
    {
        var file = SharedOptions.NotEmpty(new Argument<string>("FILE") { Description = Messages.SheetArgument });
        var port = SharedOptions.Port();
        var fuel = new Option<string?>("--fuel") { Description = Messages.FuelOption, HelpName = "NAME" };
        var send = new Command("send", Messages.PlanSendVerb) { file, port, fuel };
        send.SetAction(line =>
        {
            PlanRecord plan = SheetPlan.Make(DataSheetReader.Read(line.GetRequiredValue(file)), line.GetValue(fuel));
            using HostLine open = HostLine.Open(line.GetRequiredValue(port));
            var connection = new LoggerConnection(open);
            connection.Hello();
            connection.SendPlan(plan);
            terminal.Out.WriteLine(Messages.PlanSent(plan.Name));
            return CommandLine.Done;
        });
        return new Command("plan", Messages.PlanVerb) { send };
    }
}
