using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>
/// One cause at a time in the invented truck, mild, medium and gross. What each does to the readings is reasoned from the circuit
/// (common practice, no source), written as readings here and as a pattern in the rules.
/// </summary>
public sealed class SingleCauses
{
    private static readonly Step[] IdleAll = [Step.IdleNeutral, Step.IdleForward, Step.IdleReverse];
    private static readonly Step[] HoldAll = [Step.HoldNeutral, Step.HoldForward, Step.HoldReverse, Step.Governed, Step.Relief];
    private static readonly Step[] Forward = [Step.IdleForward, Step.HoldForward, Step.StallForward];
    private static readonly Step[] Reverse = [Step.IdleReverse, Step.HoldReverse, Step.StallReverse];
    private static readonly Step[] All = [.. IdleAll, .. HoldAll, Step.StallForward, Step.StallReverse];

    /// <summary>Cause, what it does at severity 0 (just visible) to 1 (gross).</summary>
    private static readonly Dictionary<string, Func<double, TestSession>> Trucks = new()
    {
        ["engine-power-low"] = s => Stalls(1 - 0.09 - (0.09 * s)).Set(Step.Relief, rpm: 2270 - (90 * s)),
        ["engine-limited-by-control"] = s => Stalls(0.86 - (0.1 * s)).Set(Step.Governed, rpm: 2000 - (300 * s)).Set(Step.Relief, rpm: 1860 - (300 * s)),
        ["governor-low"] = s => New().Set(Step.Governed, rpm: 2350 - (170 * s)).Set(Step.Relief, rpm: 2190 - (170 * s)),
        ["governor-high"] = s => New().Set(Step.Governed, rpm: 2560 + (170 * s)).Set(Step.Relief, rpm: 2400 + (170 * s)),
        ["governor-droop"] = s => New().Set(Step.Relief, rpm: 2170 - (150 * s)),
        ["work-relief-high"] = s => New().Set(Step.Relief, rpm: 2170 - (150 * s)),
        ["work-relief-low"] = s => New().Set(Step.Relief, rpm: 2380 + (50 * s)),
        ["work-hydraulics-loading"] = s => Stalls(0.92 - (0.08 * s)).Set(Step.IdleNeutral, rpm: 735 - (20 * s)).Set(Step.Governed, rpm: 2390 - (70 * s)).Set(Step.Relief, rpm: 2310 - (60 * s)),
        ["oil-low-or-aerated"] = s => Scattered(0.05 + (0.05 * s)).Scale(Channel.Main, 0.55 - (0.2 * s), IdleAll).Scale(Channel.Main, 0.75 - (0.35 * s), HoldAll)
            .Scale(Channel.Clutch, 0.55 - (0.2 * s), IdleAll).Scale(Channel.Clutch, 0.75 - (0.35 * s), HoldAll).Scale(Channel.Converter, 0.6 - (0.4 * s), All),
        ["strainer-restricted"] = s => Scattered(0.02 + (0.02 * s)).Scale(Channel.Main, 0.76 - (0.3 * s), HoldAll).Scale(Channel.Clutch, 0.76 - (0.3 * s), HoldAll)
            .Scale(Channel.Main, 0.75, Step.Governed).Scale(Channel.Converter, 0.5 - (0.3 * s), HoldAll),
        ["pump-worn"] = s => Engaged(1.5 + s, 1.5 + s).Scale(Channel.Main, 0.62 - (0.25 * s), IdleAll).Scale(Channel.Clutch, 0.62 - (0.25 * s), IdleAll)
            .Scale(Channel.Main, 1 - (0.25 * s), HoldAll).Scale(Channel.Clutch, 1 - (0.25 * s), HoldAll).Scale(Channel.Converter, 0.4 - (0.3 * s), All)
            .Scale(Channel.Converter, 0.5, IdleAll),
        ["regulator-low"] = s => New().Scale(Channel.Main, 0.74 - (0.25 * s), All).Scale(Channel.Clutch, 0.74 - (0.25 * s), All).Scale(Channel.Converter, 1 + (0.1 * s), All),
        ["regulator-high"] = s => New().Scale(Channel.Main, 1.17 + (0.4 * s), HoldAll).Scale(Channel.Clutch, 1.18 + (0.4 * s), HoldAll).Scale(Channel.Main, 1.05, IdleAll).Scale(Channel.Converter, 0.95 - (0.3 * s), All),
        ["modulator-slow"] = s => Engaged(2.3 + (3 * s), 2.4 + (3 * s)),
        ["modulator-harsh"] = s => Engaged(0.25 - (0.15 * s), 0.26 - (0.15 * s)),
        ["modulator-low"] = s => New().Scale(Channel.Clutch, 0.72 - (0.4 * s), HoldAll).Scale(Channel.Clutch, 0.72 - (0.4 * s), IdleAll),
        ["inching-not-released"] = s => New().Scale(Channel.Clutch, 0.72 - (0.4 * s), HoldAll).Scale(Channel.Clutch, 0.72 - (0.4 * s), IdleAll),
        ["forward-clutch-leak"] = s => Engaged(1.4, 1.05).Scale(Channel.Converter, 0.8 - (0.5 * s), Forward).Scale(Channel.Clutch, 0.97 - (0.25 * s), Forward).Scale(Channel.Main, 1 - (0.2 * s), Step.IdleForward),
        ["reverse-clutch-leak"] = s => Engaged(1.0, 1.4).Scale(Channel.Converter, 0.8 - (0.5 * s), Reverse).Scale(Channel.Clutch, 0.97 - (0.25 * s), Reverse).Scale(Channel.Main, 1 - (0.2 * s), Step.IdleReverse),
        ["both-clutches-leak"] = s => Engaged(1.4, 1.4).Scale(Channel.Converter, 0.8 - (0.5 * s), [.. Forward, .. Reverse]).Scale(Channel.Clutch, 0.97 - (0.25 * s), [.. Forward, .. Reverse]),
        ["forward-feed-open"] = s => New().Scale(Channel.Converter, 0.1, Forward).Scale(Channel.Main, 0.45 - (0.3 * s), Forward).Scale(Channel.Clutch, 0.1 - (0.08 * s), Forward).Unfilled(forward: true),
        ["reverse-feed-open"] = s => New().Scale(Channel.Converter, 0.1, Reverse).Scale(Channel.Main, 0.45 - (0.3 * s), Reverse).Scale(Channel.Clutch, 0.1 - (0.08 * s), Reverse).Unfilled(forward: false),
        ["forward-clutch-slip"] = s => New().Set(Step.StallForward, rpm: 1945 + (300 * s)),
        ["reverse-clutch-slip"] = s => New().Set(Step.StallReverse, rpm: 1945 + (300 * s)),
        ["selector-not-engaged"] = s => New().Scale(Channel.Clutch, 0.02, s < 0.3 ? Forward : s < 0.7 ? Reverse : [.. Forward, .. Reverse]),
        ["drive-input-broken"] = s => New().Set(Step.StallForward, rpm: 2380 + (40 * s)).Set(Step.StallReverse, rpm: 2390 + (30 * s)),
        ["stator-slipping"] = s => Stalls(0.76 - (0.16 * s)),
        ["converter-relief-open"] = s => New().Scale(Channel.Converter, 0.6 - (0.4 * s), All),
        ["converter-relief-closed"] = s => New().Scale(Channel.Converter, 1.35 + s, All),
        ["cooler-restricted"] = s => New().Scale(Channel.Converter, 1.3 + (0.3 * s), All),
        ["lube-plug-missing"] = s => New().Scale(Channel.Converter, 0.55 - (0.4 * s), All).Scale(Channel.Main, 0.93 - (0.1 * s), IdleAll),
        ["oil-cold"] = s => Engaged(1.9 + s, 1.9 + s).Oil(20).Scale(Channel.Main, 1.23 + (0.2 * s), IdleAll).Scale(Channel.Main, 1.16 + (0.2 * s), HoldAll)
            .Scale(Channel.Clutch, 1.2 + (0.2 * s), [.. IdleAll, .. HoldAll]).Scale(Channel.Converter, 1.25 + (0.4 * s), All),
        ["pickup-scale"] = s => Scaled(s < 0.3 ? 1.25 : s < 0.7 ? 0.5 : 2),
        ["pressure-zero-shift"] = s => new TestSession { ZeroMain = 6 + (20 * s) },
        ["pressure-lines-swapped"] = s => new TestSession { SwappedChannels = s < 0.3 ? (1, 2) : s < 0.7 ? (2, 3) : (1, 3) },
        ["gear-tag-wrong"] = s => new TestSession { Tagged = gear => gear switch { Gear.Neutral => Gear.Forward, Gear.Forward => s < 0.5 ? Gear.Neutral : Gear.Reverse, _ => Gear.Neutral } },
    };

    public static TheoryData<string, double> Severities()
    {
        var data = new TheoryData<string, double>();
        foreach (string cause in Trucks.Keys)
        {
            data.Add(cause, 0);
            data.Add(cause, 0.5);
            data.Add(cause, 1);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Severities))]
    public void Cause_is_among_the_first(string cause, double severity)
    {
        var judgement = Judged.Of(Trucks[cause](severity));
        Assert.True(Judged.First(judgement).Contains(cause), Judged.Told(judgement));
    }

    [Theory]
    [MemberData(nameof(Severities))]
    public void Ranks_count_from_one_without_gaps_and_at_most_three_share_one(string cause, double severity)
    {
        var ranks = Judged.Of(Trucks[cause](severity)).Suspects.Select(s => s.Rank).ToList();
        Assert.Equal(Enumerable.Range(1, ranks.Max()), ranks.Distinct());
        Assert.All(ranks.GroupBy(rank => rank), sharing => Assert.InRange(sharing.Count(), 1, 3));
    }

    [Theory]
    [InlineData("forward-clutch-leak", Channel.Clutch)]
    [InlineData("forward-clutch-leak", Channel.Main)]
    [InlineData("pump-worn", Channel.Clutch)]
    [InlineData("regulator-low", Channel.Converter)]
    [InlineData("stator-slipping", Channel.Converter)]
    [InlineData("converter-relief-open", Channel.Clutch)]
    public void Cause_is_still_among_the_first_without_one_channel(string cause, int channel)
    {
        var judgement = Judged.Of(Trucks[cause](0.5).Without(channel));
        Assert.True(Judged.First(judgement).Contains(cause), Judged.Told(judgement));
        Assert.Contains(judgement.Validity, note => note.Code == "incomplete");
    }

    [Fact]
    public void Leak_of_one_clutch_names_both_where_gears_are_not_known()
    {
        var session = Trucks["forward-clutch-leak"](0.6);
        session.GearsKnown = false;
        session.EngageForward = session.EngageReverse = null;
        Assert.Equal(["forward-clutch-leak", "reverse-clutch-leak"], Judged.First(Judged.Of(session)).Order());
    }

    private static TestSession New() => new();

    private static TestSession Stalls(double factor) =>
        New().Scale(Channel.Speed, factor, Step.StallForward, Step.StallReverse);

    private static TestSession Engaged(double forward, double reverse) => new() { EngageForward = forward, EngageReverse = reverse };

    private static TestSession Scattered(double scatter) => new() { Scatter = scatter };

    private static TestSession Scaled(double scale) => new() { SpeedScale = scale };
}
