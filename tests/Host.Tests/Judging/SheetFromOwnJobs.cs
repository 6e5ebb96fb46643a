using System;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.FromJobs;
using LoggerBox.Host.Units;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>A sheet drawn from jobs is tested as their sheets say, as far as these agree.</summary>
public sealed class SheetFromOwnJobs
{
    private const string SetUp = """
        [truck]
        name = "Invented truck"
        source = "invented"
        [engine]
        idle_rpm = { min = 690, max = 830 }
        [pressure]
        unit = "psi"
        [pressure.hold]
        rpm = 1800
        window_rpm = 60
        [oil]
        temperature_c = { min = 71, max = 93 }
        [stall]
        limit_s = 6
        cooldown_s = 90
        reverse_allowed = false
        [pickup]
        pulses_per_rev = 0.5
        [site]
        altitude_m = 650
        air_c = 22
        [ports]
        clutch = "per-gear"
        converter = "out"
        """;

    [Fact]
    public void What_all_their_sheets_say_is_carried_over()
    {
        DataSheet drawn = Drawn(SetUp, SetUp, SetUp);
        Assert.Equal((1800, 60), (drawn.HoldRpm, drawn.HoldWindowRpm));
        Assert.Equal((71, 93), (drawn.OilCelsius?.Min, drawn.OilCelsius?.Max));
        Assert.Equal((6, 90, false), (drawn.StallLimitSeconds, drawn.StallCooldownSeconds, drawn.StallReverseAllowed));
        Assert.Equal(0.5, drawn.PickupPulsesPerRevolution);
        Assert.Equal((650, 22), (drawn.SiteAltitudeMetres, drawn.SiteAirCelsius));
        Assert.True(drawn.ClutchPortPerGear && drawn.ConverterPortAtOutlet);
    }

    [Fact]
    public void What_they_do_not_agree_on_is_left_out_and_a_ban_on_reverse_stays()
    {
        DataSheet drawn = Drawn(SetUp, SetUp, SetUp.Replace("window_rpm = 60", "window_rpm = 40", StringComparison.Ordinal)
            .Replace("limit_s = 6", "limit_s = 5", StringComparison.Ordinal).Replace("min = 71", "min = 80", StringComparison.Ordinal)
            .Replace("reverse_allowed = false", "reverse_allowed = true", StringComparison.Ordinal).Replace("pulses_per_rev = 0.5", "pulses_per_rev = 2", StringComparison.Ordinal)
            .Replace("altitude_m = 650", "altitude_m = 20", StringComparison.Ordinal).Replace("\"out\"", "\"in\"", StringComparison.Ordinal));
        Assert.Equal((75, null, 90), (drawn.HoldWindowRpm, drawn.StallLimitSeconds, drawn.StallCooldownSeconds));
        Assert.Null(drawn.OilCelsius);
        Assert.Null(drawn.PickupPulsesPerRevolution);
        Assert.Equal((null, 22), (drawn.SiteAltitudeMetres, drawn.SiteAirCelsius));
        Assert.True(!drawn.StallReverseAllowed && drawn.ClutchPortPerGear && !drawn.ConverterPortAtOutlet);
    }

    private static DataSheet Drawn(params string[] sheets)
    {
        JobReadings[] jobs = [.. Enumerable.Range(1, 3).Select(i => new JobReadings(
            $"J{i}", new DateTimeOffset(2026, 3, i, 8, 0, 0, TimeSpan.Zero), $"SN-{i}", new System.Collections.Generic.Dictionary<string, SheetReading> { ["engine.idle_rpm"] = new(750 + i, 2) }))];
        var setUp = new SharedSetUp([.. sheets.Select(text => DataSheetReader.Parse(text, "own.toml"))]);
        string text = DrawnSheet.Write("Invented truck", "LPG", setUp, jobs, PressureUnit.Psi);
        Assert.Empty(DataSheetReader.CheckText(text, "drawn.toml"));
        return DataSheetReader.Parse(text, "drawn.toml");
    }
}
