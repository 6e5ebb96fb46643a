using System.CommandLine;

namespace LoggerBox.App.Console;

/// <summary>Data sheets.</summary>
internal static class SheetVerb
{
    public static Command Declare(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = Messages.SheetArgument };
        var check = new Command("check", Messages.SheetCheckVerb) { file };
        check.SetAction(line => Unbuilt.Run("sheet check"));
        return new Command("sheet", Messages.SheetVerb) { check };
    }
}
