using System;
using LoggerBox.Capture.Link;
using LoggerBox.Capture.Storage;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Link;
using LoggerBox.Link.Tests.Line;

namespace LoggerBox.Link.Tests.VirtualTime;

/// <summary>The host's download and the logger's answers, both as they are, with a line of the model between them.</summary>
internal sealed class VirtualDownload
{
    private static readonly DateTimeOffset Morning = new(2026, 3, 2, 9, 30, 0, TimeSpan.FromHours(1));

    private readonly ArchiveFile archive;

    public VirtualDownload(ArchiveFile archive, RecordLog log, LineQuality quality, int seed, VirtualClock? clock = null)
    {
        this.archive = archive;
        Log = log;
        Clock = clock ?? new VirtualClock();
        Line = new VirtualLine(Clock, quality, seed, port =>
        {
            LinkAnswers answers = new(log, port, RandomSession.LoggerId, bootCount: 1);
            return () => answers.Step(Clock.Now / 1000, 0);
        });
    }

    public VirtualClock Clock { get; }

    public RecordLog Log { get; }

    public VirtualLine Line { get; }

    public DownloadResult Run(LinkTiming? timing = null) =>
        new SessionDownload(new LoggerConnection(HostLine.Over(Line, "virtual"), timing, Clock), archive, SessionOrigin.Fetched, Morning).Run();
}
