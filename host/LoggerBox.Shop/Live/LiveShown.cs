using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Report;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Shop.Live;

/// <summary>One moment as the live page shows it: figures and words, ready to be put in their places.</summary>
/// <param name="State">"reading", "waiting" (connected, and nothing is recorded), or "trouble".</param>
/// <param name="Sentence">What is the matter, or what to do next.</param>
/// <param name="Clock">The stall's or the pause's seconds; empty where neither runs.</param>
internal sealed record LiveShown(
    string State, string Sentence, string Speed, string Main, string Clutch, string Converter, string Gear, string Doing, string Cue, string Clock, IReadOnlyList<string> Captured)
{
    // The logger tells its last cue for ever; after so long it is no longer about what is being done.
    private const long CueShownMicroseconds = 8_000_000;

    private const string NoReading = "–";

    public static LiveShown Trouble(string sentence) => new("trouble", sentence, NoReading, NoReading, NoReading, NoReading, "", "", "", "", []);

    public static LiveShown Of(LiveReadings readings, IReadOnlyList<ChannelCalibration> pressures, PressureUnit unit)
    {
        string Pressure(int channel, int counts) =>
            counts == SampleSet.Missing || pressures[channel - 1].Kind == ChannelKind.None
                ? NoReading
                : Figure.Of(pressures[channel - 1].PascalFromCounts(counts) / unit.InPascal(), unit.Code());
        return new LiveShown(
            readings.Sampling ? "reading" : "waiting",
            readings.Sampling ? "" : "The logger is connected and records nothing just now.",
            readings.Speed == SampleSet.Missing ? NoReading : Figure.Of(readings.Speed / 10.0, "rpm"),
            Pressure(Channel.Main, readings.Main),
            Pressure(Channel.Clutch, readings.Clutch),
            Pressure(Channel.Converter, readings.Converter),
            StepWords.Of(readings.Gear),
            readings.Step == Step.None ? "" : StepWords.Of(readings.Step),
            readings.Microseconds - readings.CueMicroseconds < CueShownMicroseconds ? CueWords.Of(readings.Cue) : "",
            ClockOf(readings),
            [.. Enum.GetValues<Step>().Where(step => step != Step.None && (readings.StepsCaptured >> (int)step & 1) == 1).Select(step => StepWords.Of(step))]);
    }

    private static string ClockOf(LiveReadings readings) =>
        readings.StallMillisecondsLeft != LiveReadings.NoLimit ? $"Stall: {Figure.Seconds(readings.StallMillisecondsLeft / 1000.0)} s left"
        : readings.CooldownMillisecondsLeft > 0 ? $"Cool down: {readings.CooldownMillisecondsLeft / 1000} s"
        : "";
}
