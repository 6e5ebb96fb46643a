using System;
using System.CommandLine;
using LoggerBox.Host;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Card;

namespace LoggerBox.App.Console;

/// <summary>The card that hangs at the truck, made from its data sheet.</summary>
internal static class SheetCardVerb
{
    public static Command Declare(Terminal terminal)
    {
        var file = SharedOptions.NotEmpty(new Argument<string>("FILE") { Description = Messages.SheetArgument });
        var fuel = new Option<string?>("--fuel") { Description = Messages.FuelOption, HelpName = "NAME" };
        var target = SharedOptions.NotEmpty(new Option<string?>("--out") { Description = CardMessages.OutOption, HelpName = "FILE" });
        var verb = new Command("card", CardMessages.Verb) { file, fuel, target };
        verb.SetAction(line =>
        {
            string? path = line.GetValue(target);
            Action<TruckCard> write = path switch
            {
                null => card => CardText.Write(terminal.Out, card),
                _ when HasEnding(path, ".html") => card => WholeFile.Write(path, CardPage.Render(card)),
                _ when HasEnding(path, ".pdf") => card => WritePaper(path, card),
                _ => throw new UserErrorException(CardMessages.Ending(path), usage: true),
            };
            write(TruckCard.Of(DataSheetReader.Read(line.GetRequiredValue(file)), line.GetValue(fuel)));
            if (path is not null)
            {
                terminal.Out.WriteLine(Messages.Wrote(path));
            }

            return CommandLine.Done;
        });
        return verb;
    }

    private static void WritePaper(string path, TruckCard card)
    {
        byte[] sheet = CardPaper.Render(card, DateTimeOffset.Now);
        WholeFile.Write(path, file => file.Write(sheet));
    }

    private static bool HasEnding(string path, string ending) => path.EndsWith(ending, StringComparison.OrdinalIgnoreCase);
}
