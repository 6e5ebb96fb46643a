using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>One time that the engine was taken above idle in a gear: its upper part, without the way up and down. Rpm and seconds.</summary>
/// <param name="First">Mean of its first third.</param>
/// <param name="Last">Mean of its last third.</param>
public sealed record SpeedRun(RecordedSession Session, long FromMicroseconds, long ToMicroseconds, double Mean, double First, double Last, double Least, double Most)
{
    public double Seconds => (ToMicroseconds - FromMicroseconds) / 1e6;
}

/// <summary>
/// Finds such times in the samples, whether they became a hold or not. Only where the gear is tagged: nothing else tells what was tried.
/// </summary>
public static class SpeedRuns
{
    private const double AboveIdleRpm = 1100;

    /// <summary>Of the run's highest speed: what lies below is the way there and back.</summary>
    private const double UpperPart = 0.88;

    /// <summary>Of what is left, at each end: the way's last bit.</summary>
    private const double WayPart = 0.15;

    public static IEnumerable<SpeedRun> Of(RecordedSession session, Gear gear)
    {
        ArgumentNullException.ThrowIfNull(session);
        var run = new List<RecordedSample>();
        foreach (var (first, end) in Stretches(session, gear))
        {
            for (int i = first; i < end; i++)
            {
                var sample = session.Samples[i];
                if (sample.SpeedTenths > AboveIdleRpm * 10)
                {
                    run.Add(sample);
                }
                else if (sample.SpeedTenths != SampleSet.Missing && run.Count > 0)
                {
                    yield return Upper(session, run);
                    run.Clear();
                }
            }

            if (run.Count > 0)
            {
                yield return Upper(session, run);
                run.Clear();
            }
        }
    }

    /// <summary>The sample sets in a gear, by their numbers: most of a long recording are in none, and those need not be read.</summary>
    private static List<(int First, int End)> Stretches(RecordedSession session, Gear gear)
    {
        EventRecord[] tags = [.. session.Events.Where(one => one.Kind == EventKind.GearTag).OrderBy(one => one.Microseconds)];
        var stretches = new List<(int First, int End)>();
        for (int i = 0; i < tags.Length; i++)
        {
            if ((Gear)tags[i].Value != gear)
            {
                continue;
            }

            int first = session.IndexAt(tags[i].Microseconds);
            int end = i + 1 < tags.Length ? session.IndexAt(tags[i + 1].Microseconds) : session.Samples.Count;
            if (stretches.Count > 0 && stretches[^1].End == first)
            {
                stretches[^1] = (stretches[^1].First, end);
            }
            else if (end > first)
            {
                stretches.Add((first, end));
            }
        }

        return stretches;
    }

    private static SpeedRun Upper(RecordedSession session, List<RecordedSample> run)
    {
        // One sample in twenty may be a spike.
        double high = run.Select(sample => sample.SpeedTenths).Order().ElementAt((run.Count - 1) * 19 / 20) / 10.0;
        int from = run.FindIndex(sample => sample.SpeedTenths >= UpperPart * high * 10);
        int to = run.FindLastIndex(sample => sample.SpeedTenths >= UpperPart * high * 10);
        int way = (int)(WayPart * (to - from));
        double[] rpm = [.. run.Skip(from + way).Take(to - from + 1 - (2 * way)).Select(sample => sample.SpeedTenths / 10.0)];
        int third = Math.Max(1, rpm.Length / 3);
        return new SpeedRun(
            session, run[from].Microseconds, run[to].Microseconds, rpm.Average(), rpm.Take(third).Average(), rpm.TakeLast(third).Average(), rpm.Min(), rpm.Max());
    }
}
