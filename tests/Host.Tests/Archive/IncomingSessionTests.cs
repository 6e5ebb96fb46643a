using System;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Tests.Archive.Places;
using LoggerBox.Host.Tests.Sessions;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

public abstract class IncomingSessionTests : StoreTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.FromHours(1));
    private static readonly SessionIdentity Identity = new(RecordedBytes.LoggerId, RecordedBytes.BootCount, 7);

    private readonly byte[] bytes = RecordedBytes.Session(7, seed: 1).ToArray();
    private readonly ArchiveFile archive;

    protected IncomingSessionTests(ArchivePlace place)
        : base(place) => archive = place.Open();

    protected override void Close() => archive.Dispose();

    [StoreFact]
    public void Parts_in_any_order_make_the_session_and_only_all_of_them_complete_it()
    {
        string id = Begin();
        archive.Incoming.StorePart(id, 1000, bytes[1000..1500]);
        archive.Incoming.StorePart(id, 0, bytes[..300]);

        Assert.Equal([new ByteRange(300, 1000), new ByteRange(1500, bytes.Length)], archive.Incoming.Missing(id));
        Assert.Throws<UserErrorException>(() => archive.Incoming.Complete(id));
        UserErrorException incomplete = Assert.Throws<UserErrorException>(() => archive.Sessions.Load(id));
        Assert.Contains($"800 of {bytes.Length} bytes", incomplete.Message, StringComparison.Ordinal);

        Assert.Equal(id, Begin());
        archive.Incoming.StorePart(id, 200, bytes[200..]);
        archive.Incoming.StorePart(id, 0, bytes);
        Assert.Empty(archive.Incoming.Missing(id));
        Assert.True(archive.Incoming.Complete(id).Complete);
        Assert.Equal(bytes, archive.Sessions.Load(id).Bytes);
        Assert.Equal(id, Assert.Single(archive.Sessions.Complete(Identity, bytes.Length)).Id);
    }

    [StoreFact]
    public void What_did_not_agree_is_kept_out_of_sight_and_the_session_begins_anew()
    {
        string id = Begin();
        archive.Incoming.StorePart(id, 0, bytes);
        archive.Incoming.Complete(id);
        archive.Incoming.SetAside(id);

        string again = Begin();

        Assert.NotEqual(id, again);
        Assert.Equal(again, Assert.Single(archive.Sessions.All()).Id);
        Assert.Equal(new ByteRange(0, bytes.Length), Assert.Single(archive.Incoming.Missing(again)));
    }

    [StoreFact]
    public void A_session_that_was_imported_while_it_arrived_is_there_once()
    {
        string arriving = Begin();
        string imported = archive.Sessions.Add(bytes, SessionOrigin.Imported, "job file", Now).Id;
        archive.Incoming.StorePart(arriving, 0, bytes);

        Assert.Equal(imported, archive.Incoming.Complete(arriving).Id);
        Assert.Equal(imported, Assert.Single(archive.Sessions.All()).Id);
    }

    [StoreFact]
    public void Parts_that_overlap_in_any_way_are_stored_without_an_overlap_and_make_the_session()
    {
        const int Seed = 11;
        Random random = new(Seed);
        string id = Begin();
        for (int i = 0; i < 40; i++)
        {
            int start = random.Next(bytes.Length);
            archive.Incoming.StorePart(id, start, bytes[start..random.Next(start + 1, bytes.Length + 1)]);
        }

        archive.Incoming.StorePart(id, 0, bytes);
        Assert.True(archive.Sessions.Find(id).Received == bytes.Length, $"seed {Seed}: some are stored twice");
        Assert.Equal(bytes, archive.Sessions.Bytes(archive.Incoming.Complete(id).Id));
    }

    private string Begin() => archive.Incoming.Begin(Identity, bytes.Length, SessionOrigin.Fetched, "COM3", Now);
}

public sealed class IncomingSessionTestsInSqlite() : IncomingSessionTests(new SqlitePlace());

[InPostgres]
public sealed class IncomingSessionTestsInPostgres() : IncomingSessionTests(new PostgresPlace());
