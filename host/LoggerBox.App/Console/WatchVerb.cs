using System;
using System.CommandLine;
using System.Threading;
using LoggerBox.App.Watching;
using LoggerBox.App.Watching.Screen;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Live;
using LoggerBox.Host.Units;

namespace LoggerBox.App.Console;

/// <summary>Live readings in the terminal, until q or Ctrl-C.</summary>
internal static class WatchVerb
{
    public static Command Declare(Terminal terminal, CancellationToken stop)
    {
        var port = SharedOptions.Port();
        var sheet = SharedOptions.Sheet();
        var fuel = new Option<string?>("--fuel") { Description = Messages.FuelOption, HelpName = "NAME" };
        var unit = SharedOptions.Unit();
        var json = SharedOptions.Json();
        var verb = new Command("watch", Messages.WatchVerb) { port, sheet, fuel, unit, json };
        verb.SetAction(line =>
        {
            DataSheet? limits = line.GetValue(sheet) is string path ? DataSheetReader.Read(path) : null;
            PressureUnit shown = line.GetValue(unit) ?? limits?.Unit ?? PressureUnit.Kilopascal;
            using LiveLine live = LiveLine.Open(
                line.GetRequiredValue(port), shown, limits is null ? null : new LiveLimits(limits, limits.EngineFor(line.GetValue(fuel)), shown));
            using var end = CancellationTokenSource.CreateLinkedTokenSource(stop);
            if (line.GetValue(json) || !terminal.CanDraw)
            {
                Run(live, line.GetValue(json) ? new JsonLines(terminal) : new PlainLines(terminal), end.Token);
            }
            else
            {
                Draw(terminal, live, new WatchView(LiveScale.Nothing(shown), "", line.GetRequiredValue(port), limits?.FileName ?? "", QuitKey.CanBeRead), end);
            }

            return CommandLine.Done;
        });
        return verb;
    }

    private static void Draw(Terminal terminal, LiveLine live, WatchView empty, CancellationTokenSource end)
    {
        if (empty.HasKeys)
        {
            QuitKey.Watch(end);
        }

        using var screen = new LiveScreen(terminal, empty);
        Run(live, screen, end.Token);
    }

    private static void Run(LiveLine live, IWatchDisplay display, CancellationToken stop)
    {
        try
        {
            live.Run(display, stop);
        }
        catch (OperationCanceledException)
        {
            // Told to end while the line was looked for.
        }
    }
}
