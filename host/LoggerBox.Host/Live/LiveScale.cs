using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Live;

/// <summary>Makes figures of the counts that a logger tells while somebody looks.</summary>
/// <param name="pressures">What the logger holds for main, clutch and converter.</param>
/// <param name="limits">Null: no sheet is at hand.</param>
public sealed class LiveScale(IReadOnlyList<ChannelCalibration> pressures, PressureUnit unit, LiveLimits? limits)
{
    // The logger tells its last cue for ever; after so long it is no longer about what is being done.
    private const long CueShownMicroseconds = 8_000_000;

    private static readonly (int Channel, string Name)[] Pressures = [(Channel.Main, "Main"), (Channel.Clutch, "Clutch"), (Channel.Converter, "Converter")];

    /// <summary>Before the first reading, and while none comes.</summary>
    public static LiveMoment Nothing(PressureUnit unit) => new LiveScale([.. Pressures.Select(_ => new ChannelCalibration())], unit, null).Of(new LiveReadings());

    /// <summary>One reading alone.</summary>
    public LiveMoment Of(LiveReadings readings)
    {
        var names = new LiveNames();
        names.Take(readings);
        return Of(readings, names);
    }

    /// <param name="names">That have taken this reading and those before it.</param>
    public LiveMoment Of(LiveReadings readings, LiveNames names)
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(names);
        bool IsSure(Step one) => names.IsSure(one, limits?.HoldRpm);
        Step step = IsSure(readings.Step) ? readings.Step : Step.None;
        double? rpm = Present(readings, readings.Speed) ? readings.Speed / 10.0 : null;
        return new LiveMoment(
            readings.Sampling,
            readings.Microseconds / 1e6,
            new LiveFigure("Engine speed", rpm, "rpm", limits?.Of(Channel.Speed, step, rpm)),
            [.. Pressures.Select(row => new LiveFigure(row.Name, Pressure(readings, row.Channel), unit.Code(), limits?.Of(row.Channel, step, rpm)))],
            readings.Gear,
            step,
            readings.Microseconds - readings.CueMicroseconds < CueShownMicroseconds ? readings.Cue : Cue.None,
            readings.StallMillisecondsLeft == LiveReadings.NoLimit ? null : readings.StallMillisecondsLeft / 1000.0,
            readings.CooldownMillisecondsLeft == 0 ? null : readings.CooldownMillisecondsLeft / 1000.0,
            [.. Enum.GetValues<Step>().Where(one => one != Step.None && (readings.StepsCaptured >> (int)one & 1) == 1 && IsSure(one))])
        {
            IsUnnamed = step != readings.Step,
            CapturedLast = IsSure(names.Newest) ? names.Newest : Step.None,
        };
    }

    private double? Pressure(LiveReadings readings, int channel)
    {
        int counts = channel switch { Channel.Main => readings.Main, Channel.Clutch => readings.Clutch, _ => readings.Converter };
        ChannelCalibration calibration = pressures[channel - 1];
        return Present(readings, counts) && calibration.Kind != ChannelKind.None ? calibration.PascalFromCounts(counts) / unit.InPascal() : null;
    }

    // After the session the logger goes on telling its last set: that is not how the truck stands now.
    private static bool Present(LiveReadings readings, int value) => readings.Sampling && value != SampleSet.Missing;
}
