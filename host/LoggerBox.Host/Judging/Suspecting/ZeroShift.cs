using System;
using System.Collections.Generic;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>A pressure channel that reads, or drifts by, more than 5 psi with the engine off, or 1 % of its range where that is known.</summary>
public static class ZeroShift
{
    private const double LargestPsi = 5;
    private const double LargestPartOfRange = 0.01;

    public static CauseScore? Find(Evidence evidence, PressureUnit unit)
    {
        var found = new List<string>();
        foreach (var session in evidence.Sessions)
        {
            for (int channel = Channel.Main; channel < Channel.Count; channel++)
            {
                if (ZeroReading.Of(session, channel) is { } zero && Largest(session, channel) is { } largest
                    && Math.Max(Math.Abs(zero.Pascal), Math.Abs(zero.DriftPascal ?? 0)) > largest)
                {
                    string name = Words.ChannelName(channel);
                    found.Add(Math.Abs(zero.Pascal) > largest
                        ? Sentences.ZeroShifted(name, zero.Pascal, largest, unit)
                        : Sentences.ZeroMoved(name, zero.DriftPascal!.Value, largest, unit));
                }
            }
        }

        return found.Count == 0 ? null : new CauseScore(Cause.PressureZeroShift, 5, -1, found, []);
    }

    private static double Largest(RecordedSession session, int channel)
    {
        var calibration = session.Header.Pressures[channel - 1];
        return calibration.Kind == ChannelKind.CurrentLoop
            ? LargestPartOfRange * Math.Abs(calibration.SpanPascal)
            : LargestPsi * PressureUnit.Psi.InPascal();
    }
}
