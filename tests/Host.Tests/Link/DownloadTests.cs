using System;
using System.Linq;
using LoggerBox.Capture.Storage;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Link;
using LoggerBox.Host.Tests.Archive.Places;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Host.Tests.Link;

public abstract class DownloadTests : StoreTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.FromHours(1));
    private static readonly TimeSpan Short = TimeSpan.FromMilliseconds(300);

    // What comes at once costs no time however long the limit; only what never comes is waited for.
    private static readonly LinkTiming Patient = new(TimeSpan.FromSeconds(20), TimeSpan.FromSeconds(10), TimeSpan.FromSeconds(20));
    private static readonly LinkTiming Quick = new(Short, Short, TimeSpan.FromSeconds(5));

    private readonly ArchiveFile archive;

    protected DownloadTests(ArchivePlace place)
        : base(place) => archive = place.Open();

    protected override void Close() => archive.Dispose();

    [StoreTheory]
    [InlineData(true)]
    [InlineData(false)]
    public void Everything_comes_byte_for_byte_and_is_confirmed_then(bool serial)
    {
        RecordLog log = LoggerOnALine.Log(6000, 1, 2);
        using LoggerOnALine logger = new(serial ? PseudoTerminal.Open() : LoopbackListener.Open(), log);

        DownloadResult result = Fetch(logger.Port);

        Assert.Equal(["S1", "S2"], result.Sessions.Select(session => session.Id));
        Assert.All(result.Sessions, session => Assert.True(session.IsNew && session.Confirmed));
        Assert.Empty(result.Notes);
        Assert.True(log.Sessions.AllConfirmed());
        Assert.Equal(LoggerOnALine.BytesOf(log, 0), archive.Sessions.Load("S1").Bytes);
        Assert.Equal(LoggerOnALine.BytesOf(log, 1), archive.Sessions.Load("S2").Bytes);
        Assert.Equal(6000, archive.Sessions.Load("S2").Session.Samples.Count);
        Assert.Equal(logger.Port, archive.Sessions.Find("S1").Source);
    }

    [StoreFact]
    public void Fetched_again_is_there_once()
    {
        using LoggerOnALine logger = new(PseudoTerminal.Open(), LoggerOnALine.Log(300, 1));
        Fetch(logger.Port);

        TakenSession again = Assert.Single(Fetch(logger.Port).Sessions);

        Assert.False(again.IsNew);
        Assert.True(again.Confirmed);
        Assert.Equal("S1", again.Id);
        Assert.Single(archive.Sessions.All());
    }

    [StoreFact]
    public void Another_session_of_the_same_numbers_and_length_is_fetched_too()
    {
        RecordLog first = LoggerOnALine.Log(300, 1);
        RecordLog second = LoggerOnALine.Log(300, 2);
        using (LoggerOnALine logger = new(PseudoTerminal.Open(), first))
        {
            Fetch(logger.Port);
        }

        using LoggerOnALine wiped = new(PseudoTerminal.Open(), second);
        Assert.True(Assert.Single(Fetch(wiped.Port).Sessions).IsNew);

        Assert.Equal(LoggerOnALine.BytesOf(first, 0), archive.Sessions.Load("S1").Bytes);
        Assert.Equal(LoggerOnALine.BytesOf(second, 0), archive.Sessions.Load("S2").Bytes);
    }

    [StoreTheory]
    [InlineData(1200)]
    [InlineData(20_000)]
    [InlineData(37_777)]
    public void A_line_cut_in_the_middle_keeps_what_came_and_the_next_fetch_brings_the_rest(int bytesUntilCut)
    {
        RecordLog log = LoggerOnALine.Log(10_000, 1);
        using (LoggerOnALine cut = new(PseudoTerminal.Open(), log, port => port.BytesUntilCut = bytesUntilCut))
        {
            UserErrorException error = Assert.Throws<UserErrorException>(() => Fetch(cut.Port, Quick));
            Assert.Contains(cut.Port, error.Message, StringComparison.Ordinal);
        }

        Assert.False(log.Sessions.AllConfirmed());
        ArchivedSession partial = Assert.Single(archive.Sessions.All());
        Assert.False(partial.Complete);
        Assert.InRange(partial.Received, Math.Max(0, bytesUntilCut - 2400), bytesUntilCut);

        long resent = 0;
        using LoggerOnALine whole = new(PseudoTerminal.Open(), log);
        using HostLine line = HostLine.Open(whole.Port);
        new SessionDownload(
            new LoggerConnection(line, Patient), archive, SessionOrigin.Fetched, Now, progress => resent = progress.Received - partial.Received).Run();

        Assert.Equal(partial.Length - partial.Received, resent);
        Assert.Equal(LoggerOnALine.BytesOf(log, 0), archive.Sessions.Load("S1").Bytes);
        Assert.True(log.Sessions.AllConfirmed());
    }

    [StoreFact]
    public void A_device_that_goes_away_is_a_cut_line()
    {
        PseudoTerminal terminal = PseudoTerminal.Open();
        using HostLine line = HostLine.Open(terminal.PortName);
        terminal.Dispose();

        UserErrorException error = Assert.Throws<UserErrorException>(() => new LoggerConnection(line, Quick).Hello());

        Assert.Contains($"The line on {terminal.PortName} was cut", error.Message, StringComparison.Ordinal);
    }

    [StoreTheory]
    [InlineData(3001)]
    [InlineData(9973)]
    public void Damaged_frames_are_asked_for_again(int bytesBetweenErrors)
    {
        RecordLog log = LoggerOnALine.Log(6000, 1);
        using LoggerOnALine logger = new(PseudoTerminal.Open(), log, port => port.BytesBetweenErrors = bytesBetweenErrors);

        Fetch(logger.Port);

        Assert.Equal(LoggerOnALine.BytesOf(log, 0), archive.Sessions.Load("S1").Bytes);
    }

    [StoreFact]
    public void A_resumed_download_from_a_logger_that_was_wiped_meanwhile_does_not_mix_two_sessions()
    {
        using (LoggerOnALine cut = new(PseudoTerminal.Open(), LoggerOnALine.Log(6000, 1), port => port.BytesUntilCut = 20_000))
        {
            Assert.Throws<UserErrorException>(() => Fetch(cut.Port, Quick));
        }

        RecordLog other = LoggerOnALine.Log(6000, 2);
        using LoggerOnALine wiped = new(PseudoTerminal.Open(), other);
        TakenSession fetched = Assert.Single(Fetch(wiped.Port).Sessions);

        Assert.Equal(LoggerOnALine.BytesOf(other, 0), archive.Sessions.Load(fetched.Id).Bytes);
        Assert.Equal(fetched.Id, Assert.Single(archive.Sessions.All()).Id);
    }

    [StoreFact]
    public void A_session_still_being_recorded_stays_on_the_logger()
    {
        RecordLog log = LoggerOnALine.Log(300, 1);
        log.BeginSession(Sessions.RecordedBytes.Header(0));
        using LoggerOnALine logger = new(PseudoTerminal.Open(), log);

        DownloadResult result = Fetch(logger.Port);

        Assert.Contains("Session 2 is still being recorded", Assert.Single(result.Notes), StringComparison.Ordinal);
        Assert.False(Assert.Single(result.Sessions).Confirmed);
        Assert.True(archive.Sessions.Find("S1").Complete);
    }

    [StoreFact]
    public void A_plan_and_the_time_arrive()
    {
        using LoggerOnALine logger = new(PseudoTerminal.Open(), LoggerOnALine.Log(5, 1));
        using HostLine line = HostLine.Open(logger.Port);
        LoggerConnection connection = new(line, Patient);

        connection.SendPlan(new PlanRecord { Name = "sample truck", GovernedTenths = 24_500 });
        connection.SetClock(Now);

        Assert.Equal("sample truck", logger.Answers.Plan.Name);
        Assert.Equal(24_500, logger.Answers.Plan.GovernedTenths);
        Assert.Equal(Now.ToUnixTimeSeconds(), logger.Answers.UtcSeconds);
    }

    private DownloadResult Fetch(string port, LinkTiming? timing = null)
    {
        using HostLine line = HostLine.Open(port);
        return new SessionDownload(new LoggerConnection(line, timing ?? Patient), archive, SessionOrigin.Fetched, Now).Run();
    }
}

public sealed class DownloadTestsInSqlite() : DownloadTests(new SqlitePlace());

[InPostgres]
public sealed class DownloadTestsInPostgres() : DownloadTests(new PostgresPlace());
