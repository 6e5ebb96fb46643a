using System;
using System.CommandLine;
using System.IO;
using System.Threading;
using LoggerBox.App.Cards;
using LoggerBox.App.Simulation;
using LoggerBox.Capture.Storage;
using LoggerBox.Host;
using LoggerBox.Host.Link;
using LoggerBox.TruckSimulator.Faults;
using LoggerBox.TruckSimulator.Storage;

namespace LoggerBox.App.Console;

/// <summary>The virtual logger and truck alone, as a process that one can connect to.</summary>
internal static class SimulateVerb
{
    // A day of samples; the file grows only as far as it is written.
    private const long CardBytes = 64 << 20;

    private const int SlowestBaud = 1200;
    private const int FastestBaud = 12_000_000;

    public static Command Declare(Terminal terminal, CancellationToken stop)
    {
        var cause = new Option<string>("--cause") { Description = Messages.CauseOption, HelpName = "CODE", DefaultValueFactory = _ => SimulatedCauses.Healthy };
        var seed = new Option<int>("--seed") { Description = Messages.SeedOption, HelpName = "N", DefaultValueFactory = _ => 1 };
        var tcp = new Option<bool>("--tcp") { Description = Messages.TcpOption };
        var store = SharedOptions.NotEmpty(new Option<string?>("--store") { Description = Messages.StoreOption, HelpName = "FILE" });
        var link = SharedOptions.NotEmpty(new Option<string?>("--link") { Description = Messages.LinkOption, HelpName = "PATH" });
        var speed = new Option<string>("--speed") { Description = Messages.SpeedOption, HelpName = "fast|real", DefaultValueFactory = _ => "fast" };
        speed.AcceptOnlyFromAmong("fast", "real");
        var baud = SharedOptions.Between(new Option<int?>("--baud") { Description = Messages.BaudOption, HelpName = "N" }, SlowestBaud, FastestBaud);
        var bench = SharedOptions.NotEmpty(new Option<string?>("--bench") { Description = CalibrateMessages.BenchOption, HelpName = "FILE" });
        var verb = new Command("simulate", Messages.SimulateVerb) { cause, seed, tcp, store, link, speed, baud, bench };
        verb.Validators.Add(words =>
        {
            if (words.GetValue(tcp) && words.GetValue(link) is not null)
            {
                words.AddError(Messages.NoLinkToTcp);
            }
        });
        verb.SetAction(words =>
        {
            SimulatedCause put = Causes.Find(words.GetRequiredValue(cause));
            string? path = CardPath(words.GetValue(store));
            using IDisposable? file = OpenCard(path, out IRecordStore card);
            var logger = new VirtualLogger(put, words.GetValue(seed), card, VirtualSettings.Beside(path));
            using IDeviceLine line = OpenLine(words.GetValue(tcp), words.GetValue(baud));
            using PortLink? name = words.GetValue(link) is string place ? PortLink.Create(place, line.PortName) : null;
            if (words.GetValue(bench) is string pressures)
            {
                OnTheBench(terminal, logger, line, new BenchPump(pressures), stop);
                return CommandLine.Done;
            }

            Run(terminal, logger, line, words.GetValue(speed) == "real", stop);
            return CommandLine.Done;
        });
        return verb;
    }

    private static IDeviceLine OpenLine(bool tcp, int? baud)
    {
        IDeviceLine line = tcp || !PseudoTerminal.IsSupported ? LoopbackListener.Open() : PseudoTerminal.Open();
        return baud is int bits ? new PacedDeviceLine(line, bits) : line;
    }

    private static void Run(Terminal terminal, VirtualLogger logger, IDeviceLine line, bool realTime, CancellationToken stop)
    {
        var service = new LoggerService(logger, line);
        bool recorded = logger.HoldsThisRun();
        while (!realTime && !recorded && !logger.Finished && !stop.IsCancellationRequested)
        {
            logger.Advance();
        }

        terminal.Out.WriteLine(line.PortName);
        terminal.Error.WriteLine(recorded ? Messages.AlreadyOnTheCard : realTime ? Messages.RecordingInRealTime : Messages.SessionIsThere);
        if (realTime && !recorded)
        {
            service.Record(stop);
        }

        service.Answer(stop);
    }

    private static void OnTheBench(Terminal terminal, VirtualLogger logger, IDeviceLine line, BenchPump bench, CancellationToken stop)
    {
        logger.BenchPascal = bench.Pascal(0);
        terminal.Out.WriteLine(line.PortName);
        terminal.Error.WriteLine(CalibrateMessages.OnTheBench);
        new LoggerService(logger, line).Record(stop, bench);
    }

    // In a folder the card's log has the name that `fetch --card` looks for.
    private static string? CardPath(string? path) => Directory.Exists(path) ? Path.Combine(path, CardFile.LogName) : path;

    private static FileStore? OpenCard(string? path, out IRecordStore card)
    {
        if (path is null)
        {
            card = new MemoryStore((int)CardBytes);
            return null;
        }

        try
        {
            var file = new FileStore(path, CardBytes);
            card = file;
            return file;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UserErrorException(Messages.CardTrouble(path, error.Message));
        }
    }
}
