using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>
/// One try of a stall, from the speed's arrival to its end, in seconds from the recording's start. A stall that sags stands still only now and
/// then, so what was held is only a part of it.
/// </summary>
/// <param name="Parts">What stood still in it, in order of time.</param>
public sealed record StallRun(double StartSeconds, double EndSeconds, IReadOnlyList<MeasuredHold> Parts)
{
    /// <summary>An engine at less than this part of the stall's speed has not arrived, or is let off. Common practice, no source.</summary>
    private const double Arrived = 0.85;

    /// <summary>Shorter than this a low speed is a lost pulse, and a pause between two parts no let-off.</summary>
    private const long LostPulseMicroseconds = 300_000;
    private const double PauseSeconds = 3.5;

    /// <summary>Longer than any sheet allows: who holds a stall for more has held it too long all the same.</summary>
    private const long FarthestMicroseconds = 65_000_000;

    public double Seconds => EndSeconds - StartSeconds;

    public bool IsOf(RecordedSession session) => Parts[0].IsOf(session);

    /// <summary>In order of time.</summary>
    public static IReadOnlyList<StallRun> Of(IReadOnlyList<MeasuredHold> holds)
    {
        ArgumentNullException.ThrowIfNull(holds);
        var runs = new List<StallRun>();
        foreach (MeasuredHold hold in holds.Where(hold => HoldGates.IsStall(hold.Step)))
        {
            StallRun run = Around(hold);
            if (runs.Count > 0 && runs[^1] is var last && last.IsOneTryWith(run))
            {
                runs[^1] = new StallRun(Math.Min(last.StartSeconds, run.StartSeconds), Math.Max(last.EndSeconds, run.EndSeconds), [.. last.Parts, hold]);
            }
            else
            {
                runs.Add(run);
            }
        }

        return runs;
    }

    private bool IsOneTryWith(StallRun next) =>
        Parts[^1].Session == next.Parts[0].Session && Parts[^1].Step == next.Parts[0].Step && next.StartSeconds - EndSeconds < PauseSeconds;

    private static StallRun Around(MeasuredHold hold)
    {
        double start = hold.StartSeconds - (hold.Record.ApproachMilliseconds / 1000.0);
        double end = hold.StartSeconds + hold.DurationSeconds;
        long from = hold.Record.StartMicroseconds;
        IReadOnlyList<RecordedSample> samples = hold.Session.Samples;
        int middle = FirstAt(samples, from);
        if (hold.Rpm is not { } rpm || middle == samples.Count || samples[middle].Microseconds > from + FarthestMicroseconds)
        {
            return new StallRun(start, end, [hold]);
        }

        // The lever may move at speed: what came before it, or after, is another try.
        long[] shifts = [.. hold.Session.Events.Where(one => one.Kind == EventKind.GearTag).Select(one => one.Microseconds)];
        long earliest = shifts.Where(shift => shift <= from).DefaultIfEmpty(long.MinValue).Max();
        long latest = shifts.Where(shift => shift > from).DefaultIfEmpty(long.MaxValue).Min();
        double least = 10 * Arrived * rpm.Value;
        double first = hold.Session.SecondsAt(Farthest(samples, middle, -1, least, earliest, latest));
        double last = hold.Session.SecondsAt(Farthest(samples, middle, 1, least, earliest, latest));
        return new StallRun(Math.Min(first, start), Math.Max(last, end), [hold]);
    }

    // The last sample on the way at which the engine stood at speed. Only the way itself is read: a day has millions of samples.
    private static long Farthest(IReadOnlyList<RecordedSample> samples, int from, int step, double leastTenths, long earliest, long latest)
    {
        long begin = samples[from].Microseconds;
        long at = begin;
        for (int i = from; i >= 0 && i < samples.Count; i += step)
        {
            RecordedSample sample = samples[i];
            if (sample.Microseconds < earliest || sample.Microseconds > latest
                || Math.Abs(sample.Microseconds - at) > LostPulseMicroseconds || Math.Abs(sample.Microseconds - begin) > FarthestMicroseconds)
            {
                break;
            }

            at = sample.SpeedTenths >= leastTenths ? sample.Microseconds : at;
        }

        return at;
    }

    // Samples lie in order of time.
    private static int FirstAt(IReadOnlyList<RecordedSample> samples, long microseconds)
    {
        int low = 0;
        int high = samples.Count;
        while (low < high)
        {
            int middle = low + ((high - low) / 2);
            (low, high) = samples[middle].Microseconds < microseconds ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
