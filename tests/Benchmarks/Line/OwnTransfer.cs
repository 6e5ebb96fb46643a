using System;
using System.Diagnostics;
using System.IO;
using System.Threading;
using LoggerBox.Capture.Link;
using LoggerBox.Capture.Storage;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Link;
using LoggerBox.Link.Tests.Line;

namespace LoggerBox.Benchmarks.Line;

/// <summary>
/// The logger's answers in a thread, the host's whole fetch in another: port opened, greeting, list, ranges into the archive on the
/// disk, comparison, confirmation. Both in this process, warm; the other tools are programs in C that start in a few milliseconds.
/// </summary>
internal sealed class OwnTransfer : ITransfer
{
    public string Name => "LoggerBox";

    public bool IsThere => true;

    public TimeSpan? Run(PacedLine line, int length, int seed, TimeSpan limit)
    {
        RecordLog log = RandomSession.Log(length, seed);
        string folder = Directory.CreateTempSubdirectory("loggerbox-line-").FullName;
        using TerminalFile plug = new(line.SenderPort);
        using CancellationTokenSource stop = new();
        Thread logger = new(() => Answer(new LinkAnswers(log, plug, RandomSession.LoggerId, bootCount: 1), stop.Token));
        logger.Start();
        try
        {
            using ArchiveFile archive = ArchiveFile.Open(Path.Combine(folder, "archive.sqlite"));
            Stopwatch clock = Stopwatch.StartNew();
            using HostLine port = HostLine.Open(line.ReceiverPort, line.Quality.Baud);
            new SessionDownload(new LoggerConnection(port), archive, SessionOrigin.Fetched, DateTimeOffset.UnixEpoch).Run();
            TimeSpan spent = clock.Elapsed;
            return spent < limit && archive.Sessions.Load("S1").Bytes.AsSpan().SequenceEqual(RandomSession.BytesOf(log)) ? spent : null;
        }
        catch (UserErrorException error)
        {
            Console.Error.WriteLine(error.Message);
            return null;
        }
        finally
        {
            stop.Cancel();
            logger.Join();
            Directory.Delete(folder, recursive: true);
        }
    }

    private static void Answer(LinkAnswers answers, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            // Busy also means that the line takes nothing just now: it is looked at again as often as the line is.
            for (int i = 0; i < 4 && answers.Step(0, 0); i++)
            {
            }

            _ = TerminalFile.usleep(200);
        }
    }
}
