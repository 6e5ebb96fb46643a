using System;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Text.Json;
using LoggerBox.Capture.Storage;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Sessions;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>A card pulled from the logger, read by the program itself.</summary>
public sealed class CardTests : IDisposable
{
    private readonly Workbench bench = new();

    private string Card => bench.At("card");

    private string Log => Path.Combine(Card, "sessions.log");

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_card_gives_the_same_bytes_as_the_cable_and_is_left_as_it_was()
    {
        RecordedCard.Make(Card, 1, 2);
        byte[] before = File.ReadAllBytes(Log);

        CommandResult result = FetchCard().Expect(0);
        string said = result.Out;

        Assert.Empty(result.Error);
        Assert.Contains("S1  session 1 of the logger, read from the card\nS2  session 2", said, StringComparison.Ordinal);
        Assert.Equal(RecordedCard.Cable(Card, bench.At("cable.sqlite")), RecordedCard.Sessions(bench.Archive));
        Assert.Contains("S1  session 1 of the logger, in the archive already", FetchCard().Expect(0).Out, StringComparison.Ordinal);
        Assert.Equal(2, RecordedCard.Sessions(bench.Archive).Count);

        // The fetch by cable has confirmed on it; the two from the card have written nothing.
        Assert.Equal(before, File.ReadAllBytes(Log).AsSpan(0, before.Length).ToArray());
    }

    [Fact]
    public void A_card_that_cannot_be_written_is_read()
    {
        RecordedCard.Make(Card, 1);
        File.SetAttributes(Log, FileAttributes.ReadOnly);
        DateTime written = File.GetLastWriteTimeUtc(Log);

        FetchCard().Expect(0);

        Assert.Equal(written, File.GetLastWriteTimeUtc(Log));
        Assert.Equal(["sessions.log"], Directory.GetFiles(Card).Select(Path.GetFileName));
        File.SetAttributes(Log, FileAttributes.Normal);
    }

    [Fact]
    public void What_a_cut_fetch_by_cable_began_is_completed_from_the_card()
    {
        RecordedCard.Make(Card, 1);
        using (var logger = SimulatedLogger.Start("--store", Card, "--seed", "1", "--tcp", "--baud", "230400"))
        {
            using Process fetch = LoggerBoxCommand.Start("fetch", "--port", logger.Port, "--archive", bench.Archive);
            RecordedCard.WaitForHalf(bench.Archive);
            logger.Kill();
            fetch.Kill();
            fetch.WaitForExit();
        }

        ArchivedSession half = Assert.Single(RecordedCard.Rows(bench.Archive));
        Assert.False(half.Complete);
        Assert.InRange(half.Received, 1, half.Length - 1);

        Assert.Contains("read from the card", FetchCard().Expect(0).Out, StringComparison.Ordinal);

        Assert.Equal(half.Id, Assert.Single(RecordedCard.Rows(bench.Archive)).Id);
        Assert.Equal(RecordedCard.Cable(Card, bench.At("cable.sqlite")), RecordedCard.Sessions(bench.Archive));
    }

    [Fact]
    public void A_damaged_page_is_a_gap_of_its_length_and_the_cable_agrees()
    {
        RecordedCard.Make(Card, 1);
        PageHeader page = DamagePage(20);

        CommandResult result = FetchCard().Expect(0);

        Assert.Contains($"Session 1: {page.Used} bytes in one place can no longer be read", result.Error, StringComparison.Ordinal);
        byte[] bytes = Assert.Single(RecordedCard.Sessions(bench.Archive));
        Assert.Equal(new byte[page.Used], bytes.AsSpan((int)page.SessionOffset, page.Used).ToArray());
        Assert.Equal(bytes, Assert.Single(RecordedCard.Cable(Card, bench.At("cable.sqlite"))));
    }

    [Fact]
    public void Destroyed_blocks_of_samples_are_told_with_the_time_that_they_took()
    {
        RecordedCard.Make(Card, 1);
        byte[] whole = Assert.Single(RecordedCard.Cable(Card, bench.At("cable.sqlite")));
        byte[] card = File.ReadAllBytes(Log);
        card[(20 * 512) + 9] ^= 0x10;
        File.WriteAllBytes(Log, card);
        FetchCard().Expect(0);

        RecordedSession damaged = SessionDecoder.Decode(Assert.Single(RecordedCard.Sessions(bench.Archive))).Session;
        RecordedSession sound = SessionDecoder.Decode(whole).Session;
        SessionGap gap = Assert.Single(damaged.Gaps);
        long[] missing = [.. sound.Samples.Select(one => one.Microseconds).Except(damaged.Samples.Select(one => one.Microseconds))];
        Assert.Equal(missing[0], gap.FromMicroseconds);
        Assert.Equal(missing[^1] + sound.Header.SampleIntervalMicroseconds, gap.ToMicroseconds);

        using JsonDocument listed = JsonDocument.Parse(LoggerBoxCommand.Run("sessions", "--json", "--archive", bench.Archive).Expect(0).Out);
        Assert.Equal(gap.Duration!.Value.TotalSeconds, listed.RootElement[0].GetProperty("gaps")[0].GetProperty("duration_s").GetDouble());
        Assert.Contains($"records damaged: {GapWords.Lasting(gap)} missing", LoggerBoxCommand.Run("sessions", "--archive", bench.Archive).Expect(0).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_card_that_rotted_after_the_cable_had_its_session_changes_nothing()
    {
        RecordedCard.Make(Card, 1);
        byte[] good = Assert.Single(RecordedCard.Cable(Card, bench.Archive));
        DamagePage(20);

        Assert.Contains("in the archive already", FetchCard().Expect(0).Out, StringComparison.Ordinal);

        Assert.Equal(good, Assert.Single(RecordedCard.Sessions(bench.Archive)));
    }

    [Fact]
    public void Another_session_of_the_same_numbers_and_length_is_kept_beside_the_first_and_said()
    {
        RecordedCard.Make(Card, 1);
        byte[] first = Assert.Single(RecordedCard.Cable(Card, bench.Archive));
        byte[] card = File.ReadAllBytes(Log);
        card[(20 * 512) + PageHeader.Length + 100] ^= 0x10;
        File.WriteAllBytes(Log, card);

        CommandResult result = FetchCard().Expect(0);

        Assert.Contains($"Session 1 was in the archive as S1 with other bytes than {Card} holds: both are kept, the one from {Card} as S2.", result.Error, StringComparison.Ordinal);
        Assert.Equal(first, RecordedCard.Sessions(bench.Archive)[0]);
        Assert.Equal(2, RecordedCard.Sessions(bench.Archive).Count);
    }

    [Fact]
    public void A_card_that_was_copied_in_part_gives_what_is_there_as_a_cut_session()
    {
        RecordedCard.Make(Card, 1);
        File.WriteAllBytes(Log, File.ReadAllBytes(Log)[..50_001]);

        CommandResult result = FetchCard().Expect(0);

        Assert.Contains("Session 1, the last on the card, breaks off without an end", result.Error, StringComparison.Ordinal);
        ArchivedSession row = Assert.Single(RecordedCard.Rows(bench.Archive));
        Assert.False(row.Ended);
        Assert.False(row.Damage.Any);
        Assert.InRange(row.Length, 25_000, 50_001);
    }

    [Fact]
    public void What_is_no_card_is_refused_by_name_and_leaves_no_archive()
    {
        FetchCard().Refused(1, "no folder", Card);
        Directory.CreateDirectory(Card);
        FetchCard().Refused(1, "no logger's log in", Card, "sessions.log");
        File.WriteAllText(Log, "these are notes " + new string('x', 5000));
        FetchCard().Refused(1, Log, "no logger's log", "nothing was read");
        File.Delete(Log);
        RecordedCard.Make(bench.At("other"), 1);
        File.Copy(bench.At("other/sessions.log"), Path.Combine(Card, "one"));
        File.Copy(bench.At("other/sessions.log"), Path.Combine(Card, "two"));
        FetchCard().Refused(1, Card, "one, two", "--card");
        LoggerBoxCommand.Run("fetch", "--card", "", "--archive", bench.Archive).Refused(2, "--card");
        LoggerBoxCommand.Run("fetch", "--card", Card, "--port", "x").Refused(2, "--port", "--card");
        Assert.False(File.Exists(bench.Archive));
    }

    [Fact]
    public void A_pipe_is_refused_without_waiting_for_it_whatever_it_is_called()
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        Directory.CreateDirectory(Card);
        Process.Start("mkfifo", Log).WaitForExit();
        FetchCard().Refused(1, Log, "empty or no plain file", "nothing was read");
        LoggerBoxCommand.Run("fetch", "--card", Log, "--archive", bench.Archive).Refused(1, Log, "empty or no plain file");
        File.CreateSymbolicLink(Path.Combine(Card, "link"), Log);
        LoggerBoxCommand.Run("fetch", "--card", Path.Combine(Card, "link"), "--archive", bench.Archive).Refused(1, "empty or no plain file");
        File.Move(Log, Path.Combine(Card, "other"));
        FetchCard().Refused(1, "no logger's log in", Card);
        Assert.False(File.Exists(bench.Archive));
    }

    [Fact]
    public void An_empty_file_is_no_card_without_sessions()
    {
        Directory.CreateDirectory(Card);
        File.WriteAllBytes(Log, []);
        FetchCard().Refused(1, Log, "empty or no plain file", "copy it again");
        Assert.False(File.Exists(bench.Archive));
    }

    [Fact]
    public void A_card_without_a_session_is_no_error()
    {
        Directory.CreateDirectory(Card);
        File.WriteAllBytes(Log, new byte[65_536]);
        Assert.Contains("holds no session", FetchCard().Expect(0).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_card_of_a_later_version_is_refused_with_both_versions()
    {
        RecordedCard.Make(Card, 1);
        RecordedCard.RaiseVersion(Log);
        FetchCard().Refused(1, Log, "version 2", "version 1", "newer program");
        Assert.False(File.Exists(bench.Archive));
    }

    [Fact]
    public void The_card_file_of_a_virtual_logger_may_have_any_name()
    {
        Directory.CreateDirectory(Card);
        File.WriteAllText(Path.Combine(Card, "readme.txt"), "a log of what was done to the truck");
        SimulatedLogger.Start("--store", Path.Combine(Card, "virtual"), "--tcp").Dispose();
        FetchCard().Expect(0);
        Assert.Single(RecordedCard.Rows(bench.Archive));
    }

    private CommandResult FetchCard() => LoggerBoxCommand.Run("fetch", "--card", Card, "--archive", bench.Archive);

    /// <summary>Flips a bit in the page's header; gives the header as it was.</summary>
    private PageHeader DamagePage(int page)
    {
        byte[] card = File.ReadAllBytes(Log);
        PageHeader header = new();
        Assert.True(header.TryRead(card, page * 512, page));
        card[(page * 512) + 9] ^= 0x10;
        File.WriteAllBytes(Log, card);
        return header;
    }
}
