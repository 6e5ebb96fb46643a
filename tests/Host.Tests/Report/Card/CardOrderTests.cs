using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Card;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Report.Card;

public class CardOrderTests
{
    /// <summary>
    /// Common practice: holds in gear with the drive wheels clear, full pedal with the truck down; pressures before any stall; the engine-off reading
    /// before and after. So the set-up changes once.
    /// </summary>
    [Fact]
    public void The_set_up_changes_once_and_pressures_come_before_stalls()
    {
        Assert.All(CardSheets.All, sheet =>
        {
            TruckCard card = TruckCard.Of(sheet);
            Assert.Equal(["FIRST", "WHEELS CLEAR", "TRUCK DOWN"], card.Stages.Select(stage => stage.Name));
            Assert.Equal(StepWords.Of(Step.Zero), Measured(card.Stages[1])[0]);
            Assert.All(Measured(card.Stages[1])[1..], name => Assert.Matches("^(Idle|Hold speed), ", name));
            Assert.All(Measured(card.Stages[2])[..^1], name => Assert.Matches("^(Full pedal|Stall), ", name));
            Assert.Equal(StepWords.Of(Step.Zero), Measured(card.Stages[2])[^1]);
        });
    }

    [Fact]
    public void Every_step_stands_once_and_is_numbered_in_order()
    {
        TruckCard card = TruckCard.Of(CardSheets.Example("common-port-psi.toml"));
        string[] names = [.. card.Stages.SelectMany(Measured)];
        IEnumerable<string> all = Enum.GetValues<Step>().Where(step => step is > Step.None and <= Step.HoldReverse).Select(step => StepWords.Of(step));
        Assert.Equal(all.Append(StepWords.Of(Step.Zero)).Order(), names.Order());
        Assert.Equal(Enumerable.Range(1, 12), card.Stages.SelectMany(stage => stage.Steps).Select(step => step.Number).OfType<int>());
    }

    /// <summary>The fewest moves among all orders of the four halves (gear with wheels clear, gear with truck down), counted here by trying them all.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_hose_for_each_clutch_is_moved_as_seldom_as_can_be(bool reverseAllowed)
    {
        DataSheet sheet = CardSheets.Parse($"[truck]\nname = \"t\"\n[ports]\nclutch = \"per-gear\"\n[stall]\nreverse_allowed = {(reverseAllowed ? "true" : "false")}\n");
        string[][] stalls = reverseAllowed ? [["F", "R"], ["R", "F"]] : [["F"]];
        string[][] holds = [["F", "R"], ["R", "F"]];
        int fewest = holds.Min(hold => stalls.Min(stall => Changes([.. hold, .. stall])));

        CardStep[] steps = [.. TruckCard.Of(sheet).Stages.SelectMany(stage => stage.Steps)];
        Assert.Equal(fewest, steps.Count(step => step.Name.Contains("hose 2 to", StringComparison.Ordinal)));
        string[] gears = [.. steps.Select(step => step.Name).Where(name => name.EndsWith("forward", StringComparison.Ordinal) || name.EndsWith("reverse", StringComparison.Ordinal)).Select(name => name.Split(", ")[1])];
        Assert.Equal(fewest, Changes(gears));
    }

    [Fact]
    public void A_stall_in_reverse_that_the_sheet_forbids_is_named_as_such()
    {
        TruckCard card = TruckCard.Of(CardSheets.Example("dual-fuel-per-gear-bar.toml"));
        CardStep[] steps = [.. card.Stages.SelectMany(stage => stage.Steps)];
        Assert.DoesNotContain(steps, step => step.Name == StepWords.Of(Step.StallReverse));
        Assert.Contains(steps, step => step.Number is null && step.Name.Contains("NO STALL IN REVERSE", StringComparison.Ordinal));
    }

    [Fact]
    public void Targets_and_times_are_the_sheets()
    {
        TruckCard card = TruckCard.Of(CardSheets.Example("common-port-psi.toml"));
        Assert.Equal("680 to 780 rpm", Find(card, Step.IdleForward).Target);
        Assert.Equal("1925 to 2075 rpm", Find(card, Step.HoldReverse).Target);
        Assert.Equal("2550 to 2650 rpm", Find(card, Step.Governed).Target);
        Assert.Equal("drop 80 to 220 rpm", Find(card, Step.Relief).Target);
        Assert.Equal("1800 to 2070 rpm", Find(card, Step.StallReverse).Target);
        Assert.Equal("5 s, StoP at 10 s", Find(card, Step.StallReverse).HowLong);
        Assert.Contains(card.Stages[2].Steps, step => step.Name.StartsWith("Cool", StringComparison.Ordinal) && step.HowLong == "120 s, then rEdY");
    }

    [Fact]
    public void Each_fuel_has_its_own_figures()
    {
        DataSheet sheet = CardSheets.Example("dual-fuel-per-gear-bar.toml");
        Assert.Equal("2320 to 2440 rpm", Find(TruckCard.Of(sheet), Step.Governed).Target);
        Assert.Equal("2360 to 2480 rpm", Find(TruckCard.Of(sheet, "petrol"), Step.Governed).Target);
        Assert.Contains("fuel petrol", TruckCard.Of(sheet, "petrol").Figures, StringComparison.Ordinal);
        Assert.Throws<UserErrorException>(() => TruckCard.Of(sheet, "steam"));
    }

    [Fact]
    public void What_the_sheet_leaves_out_is_not_made_up() =>
        Assert.Equal("not in the sheet", Find(TruckCard.Of(CardSheets.Bare), Step.StallForward).Target);

    /// <summary>A logger refuses such a plan; a card must not tell another time than it guards.</summary>
    [Fact]
    public void Times_that_no_logger_guards_make_no_card()
    {
        var error = Assert.Throws<UserErrorException>(() => TruckCard.Of(CardSheets.Parse("[truck]\nname = \"t\"\n[stall]\nlimit_s = 45\n")));
        Assert.Contains("s.toml", error.Message, StringComparison.Ordinal);
        Assert.Contains("2 to 30", error.Message, StringComparison.Ordinal);
    }

    private static CardStep Find(TruckCard card, Step step) => card.Stages.SelectMany(stage => stage.Steps).Single(line => line.Name == StepWords.Of(step));

    private static string[] Measured(CardStage stage) => [.. stage.Steps.Where(step => step.Number is not null).Select(step => step.Name)];

    private static int Changes(string[] places) => places.Skip(1).Zip(places).Count(pair => pair.First != pair.Second);
}
