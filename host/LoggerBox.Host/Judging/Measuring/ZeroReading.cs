using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>What one pressure channel read with the engine off, pascal. Drift is closing less opening reading; null where only one was taken.</summary>
public sealed record ZeroReading(double Pascal, double StandardErrorPascal, int DegreesOfFreedom, double? DriftPascal)
{
    /// <summary>Null where the session has no engine-off hold with this channel.</summary>
    /// <param name="channel">Index into <see cref="Channel"/>.</param>
    public static ZeroReading? Of(RecordedSession session, int channel)
    {
        var calibration = session.Header.Pressures[channel - 1];
        var zeros = session.Holds.Where(h => h.Step == Step.Zero && h.Readings[channel].Present).OrderBy(h => h.StartMicroseconds).ToList();
        if (calibration.Kind == ChannelKind.None || zeros.Count == 0)
        {
            return null;
        }

        var running = session.Holds.Where(h => h.Step is not (Step.Zero or Step.None)).Select(h => h.StartMicroseconds).DefaultIfEmpty(long.MaxValue);
        long firstTest = running.Min();
        long lastTest = running.Max();
        var opening = zeros.LastOrDefault(h => h.StartMicroseconds < firstTest) ?? zeros[^1];
        var closing = zeros.LastOrDefault(h => h.StartMicroseconds > lastTest);
        var reading = opening.Readings[channel];
        double pascal = calibration.PascalFromHundredths(reading.SettledHundredths);
        double? drift = closing is null || closing == opening
            ? null
            : calibration.PascalFromHundredths(closing.Readings[channel].SettledHundredths) - pascal;
        return new ZeroReading(pascal, Math.Abs(calibration.PascalPerCount()) * reading.StandardErrorThousandths / 1000.0, reading.DegreesOfFreedom, drift);
    }
}
