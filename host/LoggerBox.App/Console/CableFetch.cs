using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Link;
using LoggerBox.Protocol.Link;

namespace LoggerBox.App.Console;

/// <summary>
/// A download that outlives its line: where the plug is pulled or the logger starts again, the port's name is looked for again for a
/// while, and the download goes on from what is here.
/// </summary>
internal sealed class CableFetch : IDisposable
{
    // A line that comes back and brings nothing is a bad plug: the person is to see to it.
    private const int MostCutsWithoutProgress = 5;

    private readonly string port;
    private readonly Terminal terminal;
    private HostLine line;
    private LoggerClock clock;
    private IntakeProgress? last;
    private int cutsWithoutProgress;

    private CableFetch(string port, Terminal terminal)
    {
        this.port = port;
        this.terminal = terminal;
        line = HostLine.Open(port);
        try
        {
            clock = new LoggerClock(new LoggerConnection(line).Hello(), DateTimeOffset.UtcNow);
        }
        catch
        {
            line.Dispose();
            throw;
        }
    }

    /// <summary>Opens the port and greets who is there.</summary>
    /// <exception cref="UserErrorException">There is no such port, or no logger at it.</exception>
    public static CableFetch Open(string port, Terminal terminal) => new(port, terminal);

    /// <exception cref="UserErrorException">The line or the logger failed; what had arrived is in the archive.</exception>
    public (IReadOnlyList<TakenSession> Sessions, IReadOnlyList<string> Notes) Run(ArchiveFile archive)
    {
        HashSet<string> before = [.. archive.Sessions.All().Where(session => session.Complete).Select(session => session.Id)];
        List<string> notes = [];
        while (true)
        {
            var download = new SessionDownload(new LoggerConnection(line), archive, SessionOrigin.Fetched, DateTimeOffset.Now, Came);
            try
            {
                DownloadResult result = download.Run();
                SetClock(notes);

                // A session that came before the line was cut is as new as those after it.
                return ([.. result.Sessions.Select(session => session with { IsNew = !before.Contains(session.Id) })], [.. notes.Union(result.Notes)]);
            }
            catch (UserErrorException cut) when (line.WasCut && ++cutsWithoutProgress <= MostCutsWithoutProgress)
            {
                terminal.Error.WriteLine(Messages.LineCut(port, last, LostLine.Patience.TotalSeconds));
                notes.AddRange(download.Notes);
                last = null;
                Reopen(cut);
            }
        }
    }

    public void Dispose() => line.Dispose();

    /// <summary>For the sessions to come. Last: what is recorded already matters more, and does not depend on it.</summary>
    private void SetClock(List<string> notes)
    {
        if (clock.IsRight)
        {
            return;
        }

        try
        {
            new LoggerConnection(line).SetClock(DateTimeOffset.UtcNow);
            notes.Add(Messages.ClockSet(port, clock.WhatIsWrong));
        }
        catch (UserErrorException error)
        {
            notes.Add(Messages.ClockNotSet(port, error.Message));
        }
    }

    private void Came(IntakeProgress progress)
    {
        last = progress;
        cutsWithoutProgress = 0;
        terminal.Progress.Show(ProgressMessages.Fetching(progress.SessionNumber), progress.Received, progress.Length, isBytes: true);
    }

    private void Reopen(UserErrorException cut)
    {
        line.Dispose();
        (line, HelloAnswer hello) = LostLine.FindAgain(port, cut);
        clock = new LoggerClock(hello, DateTimeOffset.UtcNow);
    }
}
