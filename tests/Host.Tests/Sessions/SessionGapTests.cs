using System;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Host.Tests.Sessions;

/// <summary>Damage is told with the time that it took away.</summary>
public class SessionGapTests
{
    private const long Start = 1_000_000;
    private const long Block = SampleBlock.Capacity * 20_000L;

    // Records of RecordedBytes.Session: header, plan, event, three blocks, hold, end.
    private const int FirstBlock = 3;

    [Fact]
    public void A_whole_session_has_none() => Assert.Empty(Decode(bytes => { }).Gaps);

    [Fact]
    public void A_destroyed_block_is_a_gap_of_exactly_its_samples()
    {
        RecordedSession session = Decode(bytes => Destroy(bytes, FirstBlock + 1));

        SessionGap gap = Assert.Single(session.Gaps);
        Assert.Equal(Start + Block, gap.FromMicroseconds);
        Assert.Equal(Start + (2 * Block), gap.ToMicroseconds);
        Assert.Equal(TimeSpan.FromSeconds(2.56), gap.Duration);
        Assert.Equal(1, gap.Records);
        Assert.Equal("From 2.56 s to 5.12 s, 2.56 s, 1 record cannot be read: nothing is known of that time, and a hold or an event may be missing.", GapWords.Of(gap, session));
    }

    [Fact]
    public void The_first_block_is_missed_from_the_header_on_and_the_last_to_the_end()
    {
        RecordedSession session = Decode(bytes =>
        {
            Destroy(bytes, FirstBlock);
            Destroy(bytes, FirstBlock + 2);
        });

        Assert.Equal([(Start, Start + Block), (Start + (2 * Block), Start + (300 * 20_000L))], session.Gaps.Select(gap => (gap.FromMicroseconds!.Value, gap.ToMicroseconds!.Value)));
    }

    [Fact]
    public void A_destroyed_hold_costs_no_samples()
    {
        RecordedSession session = Decode(bytes => Destroy(bytes, FirstBlock + 3));

        SessionGap gap = Assert.Single(session.Gaps);
        Assert.Equal(TimeSpan.Zero, gap.Duration);
        Assert.False(gap.Cuts(0, long.MaxValue));
        Assert.Contains("no samples are missing", GapWords.Of(gap, session), StringComparison.Ordinal);
    }

    [Fact]
    public void A_lost_header_leaves_the_time_before_the_first_block_unknown()
    {
        RecordedSession session = Decode(bytes => Destroy(bytes, 0));

        SessionGap gap = Assert.Single(session.Gaps);
        Assert.Null(gap.FromMicroseconds);
        Assert.Equal(Start, gap.ToMicroseconds);
        Assert.Null(gap.Duration);
    }

    [Fact]
    public void A_cut_leaves_the_end_open()
    {
        RecordedBytes recorded = RecordedBytes.Session(7, seed: 1);
        RecordedSession session = SessionDecoder.Decode(recorded.ToArray()[..(recorded.Starts[FirstBlock + 2] + 50)]).Session;

        SessionGap gap = Assert.Single(session.Gaps);
        Assert.Equal(Start + (2 * Block), gap.FromMicroseconds);
        Assert.Null(gap.ToMicroseconds);
        Assert.Equal(50, gap.Bytes);
        Assert.True(gap.Cuts(Start + (3 * Block), Start + (4 * Block)));
    }

    [Fact]
    public void Gaps_of_blocks_that_were_lost_one_after_the_other_are_one()
    {
        RecordedSession session = Decode(bytes =>
        {
            Destroy(bytes, FirstBlock + 1);
            Destroy(bytes, FirstBlock);
        });

        SessionGap gap = Assert.Single(session.Gaps);
        Assert.Equal(TimeSpan.FromMicroseconds(2 * Block), gap.Duration);
        Assert.Equal(2, gap.Records);
    }

    [Fact]
    public void A_dropout_or_an_end_right_behind_a_lost_record_costs_no_samples_and_no_sense()
    {
        // As a logger writes them: a dropout begins with the last set before it, and an end comes at the last set, not an interval later.
        const long Last = Start + ((SampleBlock.Capacity - 1) * 20_000L);
        RecordedBytes recorded = new RecordedBytes(7).Add(RecordedBytes.Header(7));
        RecordedBytes.WriteSamples(block => recorded.Add(block), new Random(1), SampleBlock.Capacity);
        recorded.Add(new HoldRecord());
        recorded.Add(new DropoutRecord { FromMicroseconds = Last, ToMicroseconds = Last + 500_000, Reason = DropoutReason.Overrun });
        recorded.Add(new HoldRecord());
        recorded.Add(new SessionEnd { Microseconds = Last + 490_000 });
        byte[] bytes = recorded.ToArray();
        Destroy((bytes, recorded), 2);
        Destroy((bytes, recorded), 4);

        RecordedSession session = SessionDecoder.Decode(bytes).Session;

        Assert.Equal([TimeSpan.Zero, TimeSpan.Zero], session.Gaps.Select(gap => gap.Duration!.Value));
        Assert.All(session.Gaps, gap => Assert.Contains("no samples are missing", GapWords.Of(gap, session), StringComparison.Ordinal));
    }

    [Fact]
    public void A_dropout_behind_a_lost_block_leaves_just_that_block_missing()
    {
        RecordedBytes recorded = new RecordedBytes(7).Add(RecordedBytes.Header(7));
        RecordedBytes.WriteSamples(block => recorded.Add(block), new Random(1), 2 * SampleBlock.Capacity);
        recorded.Add(new DropoutRecord { FromMicroseconds = Start + (2 * Block) - 20_000, ToMicroseconds = Start + (3 * Block), Reason = DropoutReason.Overrun });
        byte[] bytes = recorded.ToArray();
        Destroy((bytes, recorded), 2);
        SessionGap gap = Assert.Single(SessionDecoder.Decode(bytes).Session.Gaps);
        Assert.Equal((Start + Block, Start + (2 * Block)), (gap.FromMicroseconds!.Value, gap.ToMicroseconds!.Value));
    }

    [Fact]
    public void Times_that_nobody_can_have_measured_have_no_duration()
    {
        RecordedBytes recorded = new RecordedBytes(7).Add(RecordedBytes.Header(7));
        recorded.Add(new DropoutRecord { FromMicroseconds = long.MinValue, ToMicroseconds = long.MinValue });
        recorded.Add(new HoldRecord());
        recorded.Add(new SessionEnd { Microseconds = long.MaxValue });
        byte[] bytes = recorded.ToArray();
        Destroy((bytes, recorded), 2);
        RecordedSession session = SessionDecoder.Decode(bytes).Session;
        Assert.Null(Assert.Single(session.Gaps).Duration);
        Assert.NotEmpty(GapWords.Of(session.Gaps[0], session));
    }

    [Fact]
    public void More_gaps_than_anybody_reads_are_told_together()
    {
        RecordedBytes recorded = new RecordedBytes(7).Add(RecordedBytes.Header(7));
        for (int i = 0; i < 12_000; i++)
        {
            recorded.Add(new HoldRecord()).Add(new DropoutRecord { FromMicroseconds = Start + i, ToMicroseconds = Start + i });
        }

        byte[] bytes = recorded.ToArray();
        for (int i = 0; i < 12_000; i++)
        {
            Destroy((bytes, recorded), 1 + (2 * i));
        }

        DecodedSession decoded = SessionDecoder.Decode(bytes);
        Assert.Equal(10_000, decoded.Session.Gaps.Count);
        Assert.Equal(12_000, decoded.Session.Gaps.Sum(gap => gap.Records));
        Assert.Equal(12_000, decoded.Damage.Records);
    }

    private static RecordedSession Decode(Action<(byte[] Bytes, RecordedBytes Recorded)> damage)
    {
        RecordedBytes recorded = RecordedBytes.Session(7, seed: 1);
        byte[] bytes = recorded.ToArray();
        damage((bytes, recorded));
        return SessionDecoder.Decode(bytes).Session;
    }

    private static void Destroy((byte[] Bytes, RecordedBytes Recorded) session, int record) =>
        Array.Clear(session.Bytes, session.Recorded.Starts[record], session.Recorded.Starts[record + 1] - session.Recorded.Starts[record]);
}
