using System;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using LoggerBox.App.Cards;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>A card that gives only a part of what is on it: what can be read is kept, the rest is said, and a better way completes it.</summary>
public sealed class FailingCardTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.Zero);

    private readonly Workbench bench = new();
    private readonly FailingCard card;
    private readonly byte[] whole;

    public FailingCardTests()
    {
        RecordedCard.Make(bench.At("card"), 1);
        card = new FailingCard(File.ReadAllBytes(bench.At("card/sessions.log")));
        whole = Fetch(bench.At("undisturbed.sqlite"), out CardResult result);
        Assert.Null(result.Failure);
    }

    public void Dispose()
    {
        card.Dispose();
        bench.Dispose();
    }

    [Fact]
    public void A_bad_sector_is_a_gap_and_is_said_and_all_else_is_there()
    {
        card.Fails = at => at / 4096 == 10;

        byte[] read = Fetch(bench.Archive, out CardResult result);

        Assert.Contains("could not be read in 8 places (Input/output error)", result.Failure, StringComparison.Ordinal);
        Assert.Equal(whole.Length, read.Length);
        int[] differing = [.. Enumerable.Range(0, whole.Length).Where(at => read[at] != whole[at])];
        Assert.All(differing, at => Assert.Equal(0, read[at]));
        Match gap = Regex.Match(Assert.Single(result.Notes), @"^Session 1: (\d+) bytes in one place");
        Assert.InRange(int.Parse(gap.Groups[1].Value), differing[^1] - differing[0] + 1, 8 * 480);
    }

    [Fact]
    public void What_came_by_cable_is_not_given_up_for_a_gap_of_the_card()
    {
        using (ArchiveFile archive = ArchiveFile.Open(bench.Archive))
        {
            archive.Sessions.Add(whole, SessionOrigin.Fetched, "COM3", Now);
        }

        card.Fails = at => at / 4096 == 10;

        Assert.Equal(whole, Fetch(bench.Archive, out CardResult result));
        Assert.False(Assert.Single(result.Sessions).IsNew);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(170)]
    [InlineData(400)]
    [InlineData(900)]
    public void A_card_that_is_pulled_while_it_is_read_leaves_what_came_and_is_completed_by_cable(int readsUntilPulled)
    {
        int reads = card.Reads + readsUntilPulled;
        card.Fails = _ => card.Reads > reads;
        using (ArchiveFile archive = ArchiveFile.Open(bench.Archive))
        {
            Assert.Contains("Input/output error", FailureOf(archive), StringComparison.Ordinal);
            Assert.DoesNotContain(archive.Sessions.All(), row => row.Complete && row.Damage.Any);
        }

        Assert.Equal([whole], RecordedCard.Cable(bench.At("card"), bench.Archive));
    }

    private string FailureOf(ArchiveFile archive)
    {
        try
        {
            return new CardFetch(new CardFile("card", "card/sessions.log", card)).Run(archive, Now).Failure!;
        }
        catch (UserErrorException error)
        {
            return error.Message;
        }
    }

    private byte[] Fetch(string path, out CardResult result)
    {
        using ArchiveFile archive = ArchiveFile.Open(path);
        result = new CardFetch(new CardFile("card", "card/sessions.log", card)).Run(archive, Now);
        return archive.Sessions.Load("S1").Bytes;
    }
}
