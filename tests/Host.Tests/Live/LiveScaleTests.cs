using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Live;
using LoggerBox.Host.Tests.DataSheets;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Live;

public class LiveScaleTests
{
    private static readonly DataSheet Sheet = DataSheetReader.Parse(SampleSheet.Full, "full.toml");

    // 4 to 20 mA in microamperes for 0 to 500 psi (3,447,379 Pa after NIST SP 811).
    private static readonly ChannelCalibration Loop = new() { Kind = ChannelKind.CurrentLoop, ZeroCounts = 4000, SpanCounts = 16000, SpanPascal = 3_447_379 };

    /// <summary>A loop at 8 mA stands at a quarter of its transducer's range.</summary>
    [Fact]
    public void Counts_become_figures_in_the_unit_that_is_shown()
    {
        LiveMoment moment = Shown(new LiveReadings { Sampling = true, Speed = 7104, Main = 8000, Microseconds = 1_500_000 });
        Assert.Equal(("710", "125.0"), (moment.Speed.Text, moment.Pressures[0].Text));
        Assert.Equal(1.5, moment.Seconds);
    }

    [Fact]
    public void What_is_missing_not_connected_or_of_a_session_that_is_over_is_no_reading()
    {
        LiveMoment moment = Shown(new LiveReadings { Sampling = true, Main = 8000, Converter = 8000 });
        Assert.Equal(["–", "125.0", "–", "–"], moment.Pressures.Prepend(moment.Speed).Select(figure => figure.Text));
        LiveMoment over = Shown(new LiveReadings { Sampling = false, Speed = 7104, Main = 8000 });
        Assert.Equal(["–", "–", "–", "–"], over.Pressures.Prepend(over.Speed).Select(figure => figure.Text));
        Assert.NotEqual("", over.Sentence);
    }

    [Fact]
    public void A_cue_is_shown_for_eight_seconds_and_clocks_while_they_run()
    {
        LiveReadings readings = new() { Sampling = true, Cue = Cue.StallWarn, CueMicroseconds = 1, Microseconds = 8_000_000, StallMillisecondsLeft = 1900, StepsCaptured = 0b110 };
        LiveMoment moment = Shown(readings);
        Assert.Equal<(string, double?, double?)>(("End the stall", 1.9, null), (moment.CueText, moment.StallSecondsLeft, moment.CooldownSecondsLeft));
        Assert.Equal([Step.Zero, Step.IdleNeutral], moment.Captured);

        readings.Microseconds++;
        readings.StallMillisecondsLeft = LiveReadings.NoLimit;
        readings.CooldownMillisecondsLeft = 42_000;
        moment = Shown(readings);
        Assert.Equal<(string, double?, double?)>(("", null, 42.0), (moment.CueText, moment.StallSecondsLeft, moment.CooldownSecondsLeft));
    }

    [Theory]
    [InlineData(Step.None, 700, "", "", "", "")]
    [InlineData(Step.Zero, 0, "", "", "", "")]
    [InlineData(Step.IdleNeutral, 700, "640 to 760", "230 to 560", "", "")]
    [InlineData(Step.IdleForward, 700, "", "230 to 560", "180 to 560", "")]
    [InlineData(Step.HoldNeutral, 1800, "1740 to 1860", "940 to 1240", "", "")]
    [InlineData(Step.HoldForward, 1800, "1740 to 1860", "940 to 1240", "910 to 1230", "at least 150")]
    [InlineData(Step.Governed, 2450, "2390 to 2510", "", "", "")]
    public void The_limits_are_those_of_the_step(Step step, int rpm, string speed, string main, string clutch, string converter)
    {
        LiveMoment moment = Shown(new LiveReadings { Sampling = true, Speed = rpm * 10, Step = step }, new LiveLimits(Sheet, Sheet.Engine, PressureUnit.Kilopascal), PressureUnit.Kilopascal);
        Assert.Equal([speed, main, clutch, converter], moment.Pressures.Prepend(moment.Speed).Select(figure => figure.Band));
    }

    /// <summary>
    /// What a virtual logger told of a truck whose oil was warmed up at 1300 rpm: at 78 s it took that for the full pedal, and at 99 s, when 2000 rpm
    /// had been held, it no longer did.
    /// </summary>
    [Fact]
    public void A_warm_up_is_neither_done_nor_low_while_its_name_may_still_change()
    {
        const uint idles = (1u << (int)Step.Zero) | (1u << (int)Step.IdleNeutral) | (1u << (int)Step.IdleForward) | (1u << (int)Step.IdleReverse);
        const uint governed = 1u << (int)Step.Governed;
        var names = new LiveNames();
        LiveReadings readings = new() { Sampling = true, Microseconds = 78_000_000, Speed = 13034, Main = 8000, Gear = Gear.Neutral, Step = Step.Governed, StepsCaptured = idles | governed };
        LiveMoment moment = Shown(readings, names);
        Assert.Equal(("neutral, 1300 rpm", "", ""), (moment.Doing, moment.Speed.Band, moment.Speed.Standing));
        Assert.Equal([Step.Zero, Step.IdleNeutral, Step.IdleForward, Step.IdleReverse], moment.Captured);

        readings = new() { Sampling = true, Microseconds = 99_000_000, Speed = 18040, Gear = Gear.Neutral, Step = Step.HoldNeutral, StepsCaptured = idles | (1u << (int)Step.HoldNeutral) };
        moment = Shown(readings, names);
        Assert.Equal(("Hold speed, neutral", "1740 to 1860", "inside"), (moment.Doing, moment.Speed.Band, moment.Speed.Standing));
        Assert.Contains(Step.HoldNeutral, moment.Captured);

        // The governor's true fault: low, and yet faster than anything before it.
        readings = new() { Sampling = true, Microseconds = 140_000_000, Speed = 21000, Gear = Gear.Neutral, Step = Step.Governed, StepsCaptured = idles | governed | (1u << (int)Step.HoldNeutral) };
        moment = Shown(readings, names);
        Assert.Equal(("Full pedal, no load", "LOW"), (moment.Doing, moment.Speed.Standing));
        Assert.Contains(Step.Governed, moment.Captured);
    }

    [Fact]
    public void A_pedal_on_the_floor_is_known_at_once_and_a_new_session_begins_anew()
    {
        var names = new LiveNames();
        LiveReadings full = new() { Sampling = true, Microseconds = 60_000_000, Speed = 24500, Gear = Gear.Neutral, Step = Step.Governed, StepsCaptured = 1u << (int)Step.Governed };
        Assert.Equal(("Full pedal, no load", "inside"), (Shown(full, names).Doing, Shown(full, names).Speed.Standing));
        Assert.Equal([Step.Governed], Shown(full, names).Captured);

        LiveReadings warming = new() { Sampling = true, Microseconds = 9_000_000, Speed = 13000, Gear = Gear.Unknown, Step = Step.Governed, StepsCaptured = 1u << (int)Step.Governed };
        Assert.Equal("steady, 1300 rpm", Shown(warming, names).Doing);
        Assert.Empty(Shown(warming, names).Captured);
    }

    [Fact]
    public void What_was_captured_is_said_with_the_signal()
    {
        var names = new LiveNames();
        LiveReadings readings = new() { Sampling = true, Microseconds = 1_000_000, Step = Step.IdleNeutral, StepsCaptured = 1u << (int)Step.Zero };
        Shown(readings, names);
        readings = new() { Sampling = true, Microseconds = 2_000_000, CueMicroseconds = 2_000_000, Cue = Cue.Captured, Step = Step.IdleNeutral, StepsCaptured = (1u << (int)Step.Zero) | (1u << (int)Step.IdleNeutral) };
        Assert.Equal("Captured: idle, neutral", Shown(readings, names).CueText);
    }

    [Fact]
    public void The_fuel_in_use_decides_and_limits_are_shown_in_the_unit_of_the_readings()
    {
        LiveLimits petrol = new(Sheet, Sheet.EngineFor("petrol"), PressureUnit.Psi);
        Assert.Equal((2450, 2550), (petrol.Of(Channel.Speed, Step.Governed, null)!.Min, petrol.Of(Channel.Speed, Step.Governed, null)!.Max));

        // 230 and 560 kPa after NIST SP 811: 1 psi is 6.894757 kPa.
        Limit main = petrol.Of(Channel.Main, Step.IdleForward, null)!;
        Assert.Equal((33.359, 81.221), (double.Round(main.Min!.Value, 3), double.Round(main.Max!.Value, 3)));
    }

    [Theory]
    [InlineData(639.9, "LOW")]
    [InlineData(640.0, "inside")]
    [InlineData(760.0, "inside")]
    [InlineData(760.1, "HIGH")]
    [InlineData(null, "")]
    public void Where_the_reading_stands_is_said_in_a_word(double? value, string word) =>
        Assert.Equal(word, new LiveFigure("Engine speed", value, "rpm", Sheet.Engine.IdleRpm).Standing);

    private static LiveMoment Shown(LiveReadings readings, LiveNames names)
    {
        names.Take(readings);
        return new LiveScale([Loop, Loop, new ChannelCalibration()], PressureUnit.Kilopascal, new LiveLimits(Sheet, Sheet.Engine, PressureUnit.Kilopascal)).Of(readings, names);
    }

    private static LiveMoment Shown(LiveReadings readings, LiveLimits? limits = null, PressureUnit unit = PressureUnit.Psi) =>
        new LiveScale([Loop, Loop, new ChannelCalibration()], unit, limits).Of(readings);
}
