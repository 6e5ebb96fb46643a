using LoggerBox.Host.DataSheets;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Host.Tests.DataSheets;

public class SheetPlanTests
{
    [Fact]
    public void A_full_sheet_becomes_a_plan_in_the_loggers_units()
    {
        PlanRecord plan = SheetPlan.Make(DataSheetReader.Parse(SampleSheet.Full, "s.toml"));
        Assert.Equal("Sample truck", plan.Name);
        Assert.Equal((6400, 7600, 24500, 600), (plan.IdleMinTenths, plan.IdleMaxTenths, plan.GovernedTenths, plan.GovernedToleranceTenths));
        Assert.Equal((900, 2600, 18000, 600), (plan.ReliefDropMinTenths, plan.ReliefDropMaxTenths, plan.HoldTenths, plan.HoldWindowTenths));
        Assert.Equal((230_000, 940_000, 1_240_000, 180_000), (plan.MainIdleMinPascal, plan.MainHoldMinPascal, plan.MainHoldMaxPascal, plan.ClutchIdleMinPascal));
        Assert.Equal((3000, 4000, 5000, 90_000), (plan.StallTargetMilliseconds, plan.StallWarnMilliseconds, plan.StallStopMilliseconds, plan.CooldownMilliseconds));
        Assert.True(plan.StallReverseForbidden);
        Assert.Equal((1, 2), (plan.PickupPulses, plan.PickupRevolutions));
    }

    [Fact]
    public void The_highest_stall_speed_survives_an_uneven_tolerance()
    {
        PlanRecord plan = SheetPlan.Make(DataSheetReader.Parse(SampleSheet.Full, "s.toml"));
        Assert.Equal(20_800, plan.StallForwardTenths + plan.StallForwardToleranceTenths);
        Assert.Equal(18_400, plan.StallForwardTenths - plan.StallForwardToleranceTenths);
    }

    [Fact]
    public void The_fuel_in_use_chooses_the_engines_figures() =>
        Assert.Equal(25_000, SheetPlan.Make(DataSheetReader.Parse(SampleSheet.Full, "s.toml"), "petrol").GovernedTenths);

    [Fact]
    public void A_silent_sheet_leaves_zero_and_the_cautious_times()
    {
        PlanRecord plan = SheetPlan.Make(DataSheetReader.Parse("[truck]\nname = \"x\"\n[engine]\nstall_rpm = { min = 1700 }\n", "s.toml"));
        Assert.Equal((0, 0, 0, 0), (plan.IdleMinTenths, plan.GovernedTenths, plan.StallForwardTenths, plan.MainHoldMinPascal));
        Assert.Equal((5000, 8000, 10_000), (plan.StallTargetMilliseconds, plan.StallWarnMilliseconds, plan.StallStopMilliseconds));
    }

    /// <summary>Plug lead of a four-stroke, wasted spark, four-cylinder coil, ring gear of 135 teeth; the fraction is an alternator's.</summary>
    [Theory]
    [InlineData(0.5, 1, 2)]
    [InlineData(1, 1, 1)]
    [InlineData(2, 2, 1)]
    [InlineData(135, 135, 1)]
    [InlineData(2.32, 58, 25)]
    [InlineData(0.3333333, 1, 3)]
    public void Pulses_per_revolution_become_a_ratio_of_whole_numbers(double pulses, int over, int under) =>
        Assert.Equal(((ushort)over, (ushort)under), PickupRatio.From(pulses));
}
