using System.Collections.Generic;
using System.CommandLine;
using LoggerBox.Host.Link;

namespace LoggerBox.App.Console;

/// <summary>The serial ports of this computer.</summary>
internal static class PortsVerb
{
    public static Command Declare(Terminal terminal)
    {
        var json = SharedOptions.Json();
        var verb = new Command("ports", Messages.PortsVerb) { json };
        verb.SetAction(line => Run(terminal, line.GetValue(json)));
        return verb;
    }

    private static int Run(Terminal terminal, bool json)
    {
        IReadOnlyList<string> names = SerialPorts.List();
        if (json)
        {
            ListingJson.WriteArray(terminal.Out, names, static (json, name) => json.WriteStringValue(name));
            return CommandLine.Done;
        }

        foreach (string name in names)
        {
            terminal.Out.WriteLine(name);
        }

        if (names.Count == 0)
        {
            terminal.Error.WriteLine(Messages.NoPorts);
        }

        return CommandLine.Done;
    }
}
