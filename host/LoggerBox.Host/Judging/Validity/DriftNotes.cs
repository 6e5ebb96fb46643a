using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>
/// Holds that count and went on in one direction from end to end: a foot that creeps, a pressure that has not come to rest. The uncertainty
/// holds the change; whoever reads the value must know that it is a middle.
/// </summary>
public static class DriftNotes
{
    public const string Code = "drifting";

    // Changes over the hold that a technician would see on his instruments, as parts of the value.
    private const double SpeedMatters = 0.01;
    private const double PressureMatters = 0.02;

    public static IEnumerable<ValidityNote> Of(StepReadings steps, PressureUnit unit)
    {
        ArgumentNullException.ThrowIfNull(steps);
        foreach (MeasuredHold hold in steps.All.Where(steps.Counts))
        {
            string[] changes = [.. Enumerable.Range(0, Channel.Count).Where(channel => Matters(hold, channel)).Select(channel => Text(hold, channel, unit))];
            if (changes.Length > 0)
            {
                yield return new ValidityNote(Code, ValidityEffect.Note, hold.Step, Sentences.NotAtRest(hold.Step, changes));
            }
        }
    }

    private static bool Matters(MeasuredHold hold, int channel) =>
        hold.Record.Drifts(channel)
        && hold.Of(channel) is { } reading
        && Math.Abs(PerSecond(hold, channel)) * hold.DurationSeconds > Math.Abs(reading.Value) * (channel == Channel.Speed ? SpeedMatters : PressureMatters);

    // Rpm or pascal.
    private static double PerSecond(MeasuredHold hold, int channel)
    {
        double perSecond = hold.Record.Readings[channel].SlopeHundredthsPerSecond / 100.0;
        return channel == Channel.Speed ? perSecond / 10 : perSecond * hold.Session.Header.Pressures[channel - 1].PascalPerCount();
    }

    private static string Text(MeasuredHold hold, int channel, PressureUnit unit)
    {
        double perSecond = PerSecond(hold, channel);
        double size = Math.Abs(perSecond);
        return Sentences.Changes(channel, perSecond < 0, channel == Channel.Speed ? Words.Rpm(size) : Words.Pressure(size, unit));
    }
}
