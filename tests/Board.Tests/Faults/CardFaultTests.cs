using System.Linq;
using LoggerBox.Board.Tests.Bench;
using LoggerBox.BoardParts.Operation;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Board.Tests.Faults;

public class CardFaultTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(700)]
    [InlineData(511)]
    public void A_card_pulled_while_it_is_written_is_said_and_what_was_committed_is_whole(int bytesThatGotThere)
    {
        using BoardBench bench = new();
        bench.Pulses.Rpm = 700;
        bench.Record().Run(10);
        int committed = bench.Session().Sets.Count;
        bench.Card.PullAfterBytes = bytesThatGotThere;
        bench.Run(4);
        Assert.Equal(LoggerState.WithoutCard, bench.Program.State);
        Assert.Equal(Cue.StoreFailed, bench.Board.Signals.Playing);
        Assert.Equal("CArd", bench.Text);

        bench.Card.IsPulled = false;
        bench.Run(6);
        Assert.Equal(LoggerState.Recording, bench.Program.State);
        Assert.NotEqual(Cue.StoreFailed, bench.Board.Signals.Playing);
        bench.Run(4);
        bench.Press(2);
        Assert.Equal(2, bench.Program.Log.Sessions.Count);
        ReadSession first = ReadSession.Of(bench.Program.Log, bench.Program.Log.Sessions[0]);
        Assert.True(first.Sets.Count >= committed);
        Assert.All(first.Sets.Skip(200), set => Assert.InRange(set.Values[Channel.Speed], 6850, 7150));
        Assert.Contains((BoardFault.Card, 0), bench.Session().Faults);
        Assert.Equal(SessionEndReason.Button, bench.Session().End!.Reason);
    }

    [Fact]
    public void A_logger_without_a_card_says_so_and_begins_when_one_comes()
    {
        using BoardBench bench = new();
        bench.Card.IsPulled = true;
        bench.Start().Run(20);
        Assert.Equal(LoggerState.WithoutCard, bench.Program.State);
        Assert.Equal("CArd", bench.Text);
        bench.Card.IsPulled = false;
        bench.Run(6);
        Assert.Equal(LoggerState.Recording, bench.Program.State);
    }

    [Fact]
    public void A_full_card_ends_the_session_says_so_and_keeps_the_sessions_that_were_not_fetched()
    {
        using BoardBench bench = new(48 * 1024);
        bench.Pulses.Rpm = 700;
        bench.Record();
        for (int i = 0; i < 200 && bench.Program.State == LoggerState.Recording; i++)
        {
            bench.Run(5);
        }

        Assert.Equal(LoggerState.Ended, bench.Program.State);
        Assert.Equal(Cue.StoreFull, bench.Board.Signals.Playing);
        ReadSession session = bench.Session();
        Assert.Equal(SessionEndReason.StoreFull, session.End!.Reason);
        Assert.Contains(session.Dropouts, dropout => dropout.Reason == DropoutReason.StoreFull);

        bench.Run(35);
        bench.Press(0.2);
        bench.Press(2);
        bench.Run(5);
        Assert.Equal(1, bench.Program.Log.Sessions.Count);
        Assert.Equal(session.Sets.Count, bench.Session().Sets.Count);
        Assert.Equal(Cue.StoreFull, bench.Board.Signals.Playing);
    }
}
