using System;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Tests.Archive.Places;
using LoggerBox.Host.Tests.Sessions;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

/// <summary>What comes quicker than the disk takes it: the disk is held back by another program that makes a change.</summary>
public abstract class ArrivingPartsTests : StoreTests
{
    private const int Piece = 1000;

    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.FromHours(1));

    private readonly byte[] bytes = RecordedBytes.Session(7, seed: 1, sampleSets: 60_000).ToArray();
    private readonly ArchiveFile archive;

    protected ArrivingPartsTests(ArchivePlace place)
        : base(place) => archive = place.Open();

    protected override void Close() => archive.Dispose();

    [StoreFact]
    public void Pieces_that_come_while_the_disk_writes_wait_for_one_write_and_the_line_for_none()
    {
        string id = Begin();
        using (ArrivingParts parts = new(archive, id))
        {
            using (Place.Hold("archive"))
            {
                Add(parts, 0, 200_000);
            }
        }

        Assert.Equal(200_000, archive.Sessions.Find(id).Received);
        Assert.True(Rows(id) <= 8, $"{Rows(id)} rows: written piece by piece");
    }

    [StoreFact]
    public void A_disk_that_refuses_is_told_and_what_it_took_before_is_here()
    {
        using ArchiveFile impatient = ArchiveFile.Open(Place.At("archive"), TimeSpan.FromSeconds(1));
        string id = Begin();
        using (ArrivingParts parts = new(impatient, id))
        {
            Add(parts, 0, 100_000);
        }

        long before = archive.Sessions.Find(id).Received;
        using (Place.Hold("archive"))
        {
            UserErrorException refusal = Assert.Throws<UserErrorException>(() =>
            {
                using ArrivingParts parts = new(impatient, id);
                Add(parts, 100_000, bytes.Length - 100_000);
                parts.Complete();
            });
            Assert.Contains("in use by another program", refusal.Message, StringComparison.Ordinal);
        }

        Assert.Equal(100_000, before);
        Assert.Equal(before, archive.Sessions.Find(id).Received);
        using (ArrivingParts parts = new(archive, id))
        {
            Add(parts, 100_000, bytes.Length - 100_000);
            Assert.Equal(bytes, archive.Sessions.Bytes(parts.Complete().Id));
        }
    }

    private void Add(ArrivingParts parts, int start, int count)
    {
        for (int at = start; at < start + count; at += Piece)
        {
            parts.Add(at, bytes.AsSpan(at, Math.Min(Piece, start + count - at)));
        }
    }

    private long Rows(string id) => archive.Read(open => open.Scalar("SELECT count(*) FROM parts WHERE session = @id", ("@id", archive.Sessions.RowOf(open, id))));

    private string Begin() => archive.Incoming.Begin(new SessionIdentity(RecordedBytes.LoggerId, RecordedBytes.BootCount, 7), bytes.Length, SessionOrigin.Fetched, "COM3", Now);
}

public sealed class ArrivingPartsTestsInSqlite() : ArrivingPartsTests(new SqlitePlace());

[InPostgres]
public sealed class ArrivingPartsTestsInPostgres() : ArrivingPartsTests(new PostgresPlace());
