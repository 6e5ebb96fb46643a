using System.Linq;
using LoggerBox.Campaign;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>
/// The first trucks of the campaign, one or more with every cause. The bounds are those of the whole; the simulator shares no formula
/// with the rules.
/// </summary>
public class CampaignTests
{
    [Fact]
    public void Every_visible_cause_is_named_no_sound_truck_is_accused_and_no_verdict_is_wrong()
    {
        var bench = new Bench();
        var tally = new Tally([.. Schedule.Of(90, 1).AsParallel().Select(bench.Test)]);
        var said = new System.IO.StringWriter();
        Account.Write(tally, said);
        Assert.True(tally.Visible.Count > 50, said.ToString());
        Assert.True(tally.Missed.Count() <= 0.02 * tally.Visible.Count, said.ToString());
        Assert.True(!tally.Accused.Any(), said.ToString());
        Assert.True(tally.Verdicts.Count > 1000 && tally.Wrong.Count == 0, said.ToString());
    }
}
