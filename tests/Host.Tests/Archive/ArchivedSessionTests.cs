using System;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Tests.Archive.Places;
using LoggerBox.Host.Tests.Sessions;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

public abstract class ArchivedSessionTests : StoreTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.FromHours(1));

    private readonly ArchiveFile archive;

    protected ArchivedSessionTests(ArchivePlace place)
        : base(place) => archive = place.Open("new folder/archive");

    protected override void Close() => archive.Dispose();

    [StoreFact]
    public void A_session_comes_back_byte_for_byte_with_its_columns()
    {
        byte[] bytes = RecordedBytes.Session(7, seed: 1).ToArray();

        AddedSession added = archive.Sessions.Add(bytes, SessionOrigin.Imported, "trace.csv", Now);

        Assert.Equal(new AddedSession("S1", IsNew: true), added);
        LoadedSession loaded = archive.Sessions.Load("s1");
        Assert.Equal(bytes, loaded.Bytes);
        Assert.Equal(300, loaded.Session.Samples.Count);
        ArchivedSession row = Assert.Single(archive.Sessions.All());
        Assert.Equal(row, loaded.Row);
        Assert.Equal(new SessionIdentity(RecordedBytes.LoggerId, RecordedBytes.BootCount, 7), row.Identity);
        Assert.Equal(SessionOrigin.Imported, row.Origin);
        Assert.Equal("trace.csv", row.Source);
        Assert.Equal(Now, row.Stored);
        Assert.Equal(TimeSpan.FromHours(1), row.Stored.Offset);
        Assert.True(row.Complete && row.Ended);
        Assert.Equal(DateTimeOffset.FromUnixTimeSeconds(1_790_000_000), row.Start);
        Assert.Equal(TimeSpan.FromMilliseconds(299 * 20), row.Duration);
        Assert.Equal((300, 1, "sample plan"), (row.SampleSets, row.Holds, row.PlanName));
        Assert.Equal(new SessionDamage(), row.Damage);
    }

    [StoreFact]
    public void Imported_twice_is_there_once()
    {
        byte[] bytes = RecordedBytes.Session(7, seed: 1).ToArray();
        archive.Sessions.Add(bytes, SessionOrigin.Imported, "trace.csv", Now);

        AddedSession again = archive.Sessions.Add(bytes, SessionOrigin.Imported, "copy of trace.csv", Now.AddDays(1));

        Assert.Equal(new AddedSession("S1", IsNew: false), again);
        Assert.Equal("trace.csv", Assert.Single(archive.Sessions.All()).Source);
        Assert.Equal(bytes, archive.Sessions.Load("S1").Bytes);
    }

    [StoreFact]
    public void Other_content_under_the_same_numbers_is_kept_beside()
    {
        archive.Sessions.Add(RecordedBytes.Session(7, seed: 1).ToArray(), SessionOrigin.Fetched, "COM3", Now);
        archive.Sessions.Add(RecordedBytes.Session(7, seed: 2).ToArray(), SessionOrigin.Fetched, "COM3", Now);

        Assert.Equal(["S1", "S2"], archive.Sessions.All().Select(row => row.Id));
    }

    [StoreFact]
    public void A_damaged_session_is_kept_with_its_damage_noted()
    {
        byte[] bytes = RecordedBytes.Session(7, seed: 1).ToArray();
        bytes[600] ^= 1;

        string id = archive.Sessions.Add(bytes, SessionOrigin.Fetched, "COM3", Now).Id;

        LoadedSession loaded = archive.Sessions.Load(id);
        Assert.Equal(bytes, loaded.Bytes);
        Assert.Equal(1, loaded.Row.Damage.Records);
        Assert.True(loaded.Row.Damage.Bytes > 0);
    }

    [StoreFact]
    public void A_session_without_a_clock_is_dated_by_a_new_row()
    {
        RecordedBytes undated = new(9);
        undated.Add(new SessionHeader { LoggerId = 1, BootCount = RecordedBytes.BootCount, SessionNumber = 9 });
        byte[] bytes = undated.ToArray();
        string id = archive.Sessions.Add(bytes, SessionOrigin.Fetched, "COM3", Now).Id;
        Assert.Null(archive.Sessions.Find(id).Start);

        archive.Corrections.DateSession(id, Now.AddDays(-2), "A. Fitter", "clock cell empty", Now);
        archive.Corrections.DateSession(id, Now.AddDays(-1), "A. Fitter", "the day before, by the work order", Now);

        Assert.Equal(Now.AddDays(-1), archive.Sessions.Find(id).Start);
        Assert.Equal(2, archive.Corrections.Of(id).Count);
        Assert.Equal(bytes, archive.Sessions.Load(id).Bytes);
    }

    [StoreTheory]
    [InlineData("S1")]
    [InlineData("S0")]
    [InlineData("J1")]
    [InlineData("S1; DROP TABLE sessions")]
    [InlineData("")]
    public void An_id_that_the_archive_does_not_hold_is_refused_by_name(string id)
    {
        UserErrorException refusal = Assert.Throws<UserErrorException>(() => archive.Sessions.Load(id));
        Assert.Contains($"no session {id}", refusal.Message, StringComparison.Ordinal);
        Assert.Contains(archive.Path, refusal.Message, StringComparison.Ordinal);
    }

    [StoreFact]
    public void Nothing_is_added_for_no_bytes()
    {
        Assert.Throws<UserErrorException>(() => archive.Sessions.Add([], SessionOrigin.Imported, "empty.csv", Now));
        Assert.Empty(archive.Sessions.All());
    }
}

public sealed class ArchivedSessionTestsInSqlite() : ArchivedSessionTests(new SqlitePlace());

[InPostgres]
public sealed class ArchivedSessionTestsInPostgres() : ArchivedSessionTests(new PostgresPlace());
