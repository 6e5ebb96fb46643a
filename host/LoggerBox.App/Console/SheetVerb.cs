using System.Collections.Generic;
using System.CommandLine;
using System.IO;
using System.Linq;
using LoggerBox.Host;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Report;

namespace LoggerBox.App.Console;

/// <summary>Data sheets.</summary>
internal static class SheetVerb
{
    public static Command Declare(Terminal terminal)
    {
        var file = SharedOptions.NotEmpty(new Argument<string>("FILE") { Description = Messages.SheetArgument });
        var check = new Command("check", Messages.SheetCheckVerb) { file };
        check.SetAction(line => Check(terminal, line.GetRequiredValue(file)));
        return new Command("sheet", Messages.SheetVerb) { check, SheetCardVerb.Declare(terminal), SheetFromVerb.Declare(terminal), SheetListVerb.Declare(terminal) };
    }

    private static int Check(Terminal terminal, string path)
    {
        IReadOnlyList<SheetFinding> findings = DataSheetReader.Check(path);
        string name = Path.GetFileName(path);
        foreach (SheetFinding finding in findings)
        {
            terminal.Out.WriteLine(PlainText.Of(Messages.SheetFinding(name, finding.Line, finding.Text, finding.Level == FindingLevel.Error)));
        }

        SheetFinding[] errors = [.. findings.Where(finding => finding.Level == FindingLevel.Error)];
        if (errors.Length > 0)
        {
            throw new UserErrorException(Messages.SheetRefused(name, errors[0].Line, errors.Length));
        }

        terminal.Out.WriteLine(Messages.SheetGood(name, findings.Count));
        return CommandLine.Done;
    }
}
