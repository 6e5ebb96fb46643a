using System;
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
/// The logger's answers in a thread, the host's whole fetch in another: greeting, list, ranges into the archive on the disk,
/// comparison, confirmation. Both in this process.
/// </summary>
internal sealed class OwnTransfer : ITransfer
{
    public string Name => "LoggerBox";

    public bool IsThere => true;

    public bool Run(PacedLine line, int length, int seed, TimeSpan limit)
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
            using HostLine port = HostLine.Open(line.ReceiverPort, line.Quality.Baud);

            // A line that is gone ends the download, wherever it is.
            using CancellationTokenSource late = new(limit);
            using CancellationTokenRegistration pull = late.Token.Register(port.Dispose);
            new SessionDownload(new LoggerConnection(port), archive, SessionOrigin.Fetched, DateTimeOffset.UnixEpoch).Run();
            return archive.Sessions.Load("S1").Bytes.AsSpan().SequenceEqual(RandomSession.BytesOf(log));
        }
        catch (UserErrorException error)
        {
            Console.Error.WriteLine(error.Message);
            return false;
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
            for (int i = 0; i < 64 && answers.Step(0, 0); i++)
            {
            }

            _ = TerminalFile.usleep(200);
        }
    }
}
