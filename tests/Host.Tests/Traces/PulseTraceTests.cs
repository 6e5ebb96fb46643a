using System;
using System.Globalization;
using System.Linq;
using LoggerBox.Host.Traces;
using Xunit;

namespace LoggerBox.Host.Tests.Traces;

public class PulseTraceTests
{
    private static readonly string Rows = "time_s\n" + string.Concat(Enumerable.Range(0, 300).Select(i => FormattableString.Invariant($"{i * 0.02:F3}\n")));

    /// <summary>rpm = 60 f / pulses per revolution: 2000 rpm give 16.667 Hz on one plug lead of a four-stroke, 4500 Hz on a ring gear of 135 teeth.</summary>
    [Theory]
    [InlineData(0.5, 16.666667)]
    [InlineData(1, 33.333333)]
    [InlineData(2, 66.666667)]
    [InlineData(135, 4500)]
    public void Steady_edges_give_the_speed_they_stand_for(double pulsesPerRevolution, double hertz)
    {
        Trace trace = TraceText.Read(Rows, source => source with { PulsesPerRevolution = pulsesPerRevolution }, Edges(0.5, 5.9, hertz));
        Assert.Equal(0, trace.SpeedTenths![20]);
        Assert.All(trace.SpeedTenths.Skip(40).Take(250), tenths => Assert.InRange(tenths, 19_990, 20_010));
        Assert.Equal(pulsesPerRevolution, trace.PulsesPerRevolution);
        Assert.Equal(500_000, trace.PulseEdgesMicroseconds![0]);
    }

    [Fact]
    public void After_the_last_edge_the_speed_falls_to_zero()
    {
        Trace trace = TraceText.Read(Rows, source => source with { PulsesPerRevolution = 0.5 }, Edges(0, 3, 16.666667));
        Assert.InRange(trace.SpeedTenths![150], 19_900, 20_100);
        Assert.InRange(trace.SpeedTenths[200], 1, 2000);
        Assert.Equal(0, trace.SpeedTenths[250]);
    }

    [Fact]
    public void An_engine_that_starts_again_is_not_averaged_with_the_time_it_stood()
    {
        Trace trace = TraceText.Read(Rows, source => source with { PulsesPerRevolution = 1 }, Edges(0, 1, 20) + Edges(4, 5.9, 20));
        Assert.Equal(0, trace.SpeedTenths![150]);
        Assert.All(trace.SpeedTenths.Skip(205).Take(80), tenths => Assert.InRange(tenths, 11_990, 12_010));
    }

    [Fact]
    public void A_column_rpm_gives_way_to_the_pulses_with_a_note()
    {
        Trace trace = TraceText.Read("time_s,rpm\n1,5\n1.02,5\n", source => source with { PulsesPerRevolution = 1 }, Edges(0, 2, 20));
        Assert.InRange(trace.SpeedTenths![0], 11_990, 12_010);
        Assert.Contains(trace.Notes, note => note.Contains("rpm was ignored", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("0.1\n0.2\n0.15\n", "p.txt, line 3: time goes back")]
    [InlineData("0.1\n0.1\n", "p.txt, line 2: time stands still")]
    [InlineData("# x\nedge\n", "p.txt, line 2: the edge's time is \"edge\"")]
    [InlineData("0.1,0.2\n", "p.txt, line 1: the edge's time")]
    [InlineData("nan\n", "p.txt, line 1: the edge's time")]
    [InlineData("", "p.txt, line 1: there are no edges")]
    public void Edges_that_cannot_be_right_are_refused_with_their_line(string pulses, string message)
    {
        var error = Assert.Throws<UserErrorException>(() => TraceText.Read(Rows, source => source with { PulsesPerRevolution = 1 }, pulses));
        Assert.StartsWith(message, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null)]
    [InlineData(0.0)]
    [InlineData(-1.0)]
    [InlineData(double.NaN)]
    [InlineData(5000.0)]
    public void Pulses_need_to_know_how_many_make_a_turn(double? pulsesPerRevolution) =>
        Assert.True(Assert.Throws<UserErrorException>(() => TraceText.Read(Rows, source => source with { PulsesPerRevolution = pulsesPerRevolution }, "0.1\n")).Usage);

    private static string Edges(double from, double to, double hertz) =>
        string.Concat(Enumerable.Range(0, (int)((to - from) * hertz) + 1).Select(i => (from + i / hertz).ToString("F6", CultureInfo.InvariantCulture) + "\n"));
}
