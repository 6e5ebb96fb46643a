using System;
using System.Linq;
using LoggerBox.Host.Traces;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Traces;

public class TraceReadingTests
{
    private const string Plain =
        "# a remark\ntime_s,rpm,main_psi,clutch_kPa,converter_bar,gear,step,oil_C\n0.000,0.0,-0.1,10,0.5,N,zero,80.5\n# another\n0.020,700.4,150,,0.25,,,\n0.040,,151,12,0.75,F,idle-F,81\n";

    [Fact]
    public void Every_column_arrives_in_base_units_and_empty_cells_are_missing()
    {
        Trace trace = TraceText.Read(Plain);
        Assert.Equal("t.csv", trace.FileName);
        Assert.Equal([0L, 20_000, 40_000], trace.Microseconds);
        Assert.Equal([0, 7004, SampleSet.Missing], trace.SpeedTenths!);
        Assert.Equal([Gear.Neutral, Gear.Unknown, Gear.Forward], trace.Gears!);
        Assert.Equal([Step.Zero, Step.None, Step.IdleForward], trace.Steps!);
        Assert.Equal([805, SampleSet.Missing, 810], trace.OilTenthsCelsius!);
        Assert.Equal(PressureUnit.Psi, trace.Main!.PrintedUnit);
        Assert.True(trace.Main.TryGet(1, out double pascal));
        Assert.Equal(150 * 6894.757293168361, pascal, 6);
        Assert.False(trace.Clutch!.TryGet(1, out _));
        Assert.True(trace.Converter!.TryGet(2, out pascal));
        Assert.Equal(75_000, pascal, 6);
    }

    [Fact]
    public void Byte_order_mark_carriage_returns_quotes_spaces_and_a_missing_last_line_end_change_nothing()
    {
        string dressed = "\uFEFF" + Plain.Replace("700.4", "\"700.4\"", StringComparison.Ordinal).Replace(",F,", ", F ,", StringComparison.Ordinal)
            .Replace("main_psi", "\"main_psi\"", StringComparison.Ordinal).Replace("\n", "\r\n", StringComparison.Ordinal).TrimEnd();
        Trace plain = TraceText.Read(Plain);
        Trace trace = TraceText.Read(dressed);
        Assert.Equal(plain.Microseconds, trace.Microseconds);
        Assert.Equal(plain.SpeedTenths, trace.SpeedTenths);
        Assert.Equal(plain.Gears, trace.Gears);
        Assert.Equal(plain.OilTenthsCelsius, trace.OilTenthsCelsius);
    }

    [Fact]
    public void An_unknown_column_is_ignored_with_a_note()
    {
        Trace trace = TraceText.Read("time_s,ambient,\"remark, long\",timestamp\n0,abc,\"x, \"\"y\"\"\",z\n0.1,,,\n");
        Assert.Equal(2, trace.Count);
        Assert.Contains(trace.Notes, note => note.Contains("\"ambient\"", StringComparison.Ordinal));
        Assert.Contains(trace.Notes, note => note.Contains("\"remark, long\"", StringComparison.Ordinal));
        Assert.Null(trace.SpeedTenths);
        Assert.All(trace.Pressures, Assert.Null);
        Assert.Null(trace.Gears);
    }

    [Theory]
    [InlineData("0.1", 0.1)]
    [InlineData("+3.5", 3.5)]
    [InlineData("-.5", -0.5)]
    [InlineData("7.", 7)]
    [InlineData("1.5e2", 150)]
    [InlineData("123456789012345e-12", 123.456789012345)]
    [InlineData("0.12345678901234567890", 0.12345678901234568)]
    [InlineData("00012.50", 12.5)]
    public void A_number_may_be_written_in_any_decimal_form(string cell, double kilopascal)
    {
        Assert.True(TraceText.Read($"time_s,main_kPa\n0,{cell}\n").Main!.TryGet(0, out double pascal));
        Assert.Equal(kilopascal * 1000, pascal, 9);
    }

    [Fact]
    public void Times_that_count_from_1970_keep_their_milliseconds() =>
        Assert.Equal([1_764_064_800_123_000, 1_764_064_800_133_000], TraceText.Read("time_s\n1764064800.123\n1764064800.133\n").Microseconds);

    [Fact]
    public void Few_rows_a_second_are_noted()
    {
        Assert.Contains(TraceText.Read("time_s\n0\n1\n2\n").Notes, note => note.Contains("1 rows a second", StringComparison.Ordinal));
        Assert.Empty(TraceText.Read("time_s\n0\n0.02\n0.04\n").Notes);
    }

    [Fact]
    public void Speeds_that_no_sample_can_hold_are_noted()
    {
        Assert.Contains(TraceText.Read("time_s,rpm\n0,9800\n0.02,6553.5\n0.04,6553.4\n").Notes, note => note.StartsWith("2 readings", StringComparison.Ordinal));
        Assert.Empty(TraceText.Read("time_s,rpm\n0,6553.4\n0.02,\n").Notes);
    }

    [Fact]
    public void A_loop_current_stays_a_current_with_its_range()
    {
        Trace trace = TraceText.Read("time_s,main_mA\n0,12.5\n0.1,3.5\n", source => source with { RangeMain = ChannelRange.Parse("0..500psi") });
        Assert.True(trace.Main!.IsLoopCurrent);
        Assert.Equal(500, trace.Main.Range!.High);
        Assert.True(trace.Main.TryGet(1, out double milliampere));
        Assert.Equal(3.5, milliampere);
    }

    [Fact]
    public void A_range_that_nothing_needs_is_noted()
    {
        Trace trace = TraceText.Read("time_s,main_psi\n0,1\n", source => source with { RangeMain = ChannelRange.Parse("0..500psi"), RangeClutch = ChannelRange.Parse("0..500psi") });
        Assert.Equal(2, trace.Notes.Count(note => note.StartsWith("--range-", StringComparison.Ordinal)));
    }
}
