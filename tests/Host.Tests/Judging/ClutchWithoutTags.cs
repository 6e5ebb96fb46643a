using System.Linq;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>
/// Which of four causes empties a clutch where no gear is known. With a plug of the feed missing nothing stands in it; a leak leaves pressure, and
/// plates that drive (common practice, no source).
/// </summary>
public sealed class ClutchWithoutTags
{
    [Fact]
    public void A_clutch_that_holds_half_of_main_and_a_stall_leaks()
    {
        var session = new TestSession { GearsKnown = false, EngageForward = 3.6 }
            .Set(Step.IdleForward, main: 35, clutch: 20, converter: 11.5).Set(Step.HoldForward, main: 131, clutch: 75, converter: 14.4).Set(Step.StallForward, main: 137, clutch: 79, converter: 13);
        var judgement = Judged.Of(session);
        Assert.True(Judged.First(judgement).Order().SequenceEqual(["forward-clutch-leak", "reverse-clutch-leak"]), Judged.Told(judgement));
    }

    /// <summary>The only hold and stall that were captured are of the clutch that fills, and so are all engagements.</summary>
    [Fact]
    public void A_hold_alone_belongs_to_the_clutch_that_it_resembles()
    {
        var session = new TestSession { GearsKnown = false, EngageForward = null }
            .Set(Step.IdleForward, main: 27, clutch: 1, converter: 10.8).Without(Step.HoldForward).Without(Step.StallForward);
        var judgement = Judged.Of(session);
        Assert.True(Judged.First(judgement).Order().SequenceEqual(["forward-feed-open", "reverse-feed-open"]), Judged.Told(judgement));
    }

    [Fact]
    public void With_tags_an_empty_clutch_is_either()
    {
        var session = new TestSession().Set(Step.IdleForward, main: 27, clutch: 1, converter: 10.8).Set(Step.HoldForward, main: 125, clutch: 4, converter: 9)
            .Without(Step.StallForward).Unfilled(forward: true);
        Assert.Equal(["forward-clutch-leak", "forward-feed-open"], Judged.First(Judged.Of(session)).Order());
    }
}
