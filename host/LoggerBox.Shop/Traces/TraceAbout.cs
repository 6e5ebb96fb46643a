using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Shop.Traces;

/// <summary>What a trace's figure shows beside the lines. Seconds from the recording's start.</summary>
/// <param name="Unit">Code of the pressures' unit; <paramref name="UnitWords"/> is how it is printed.</param>
internal sealed record TraceAbout(double From, double To, string Unit, string UnitWords, IReadOnlyList<TraceHold> Holds)
{
    /// <param name="session">One of the subject's.</param>
    public static TraceAbout Of(JudgedSubject judged, string session)
    {
        Judgement judgement = judged.Judgement;
        RecordedSession recorded = judged.Subject.Recordings.First(recording => recording.Row!.Id == session).Session;
        long zero = recorded.Header.StartMicroseconds;
        (double from, double to) = recorded.Samples is [var first, .., var last]
            ? ((first.Microseconds - zero) / 1e6, (last.Microseconds - zero) / 1e6)
            : (0, 0);
        return new TraceAbout(
            from, to, judgement.Unit.Code(), Figure.Unit(judgement.Unit), [.. RecordingHolds.Of(recorded, judgement).OrderBy(hold => hold.StartSeconds).Select((hold, index) => Of(index + 1, hold, judgement))]);
    }

    private static TraceHold Of(int number, JudgedHold hold, Judgement judgement) => new(
        number,
        StepCodes.Text(hold.Step),
        StepWords.Of(hold.Step),
        hold.StartSeconds,
        hold.StartSeconds + hold.DurationSeconds,
        [.. RecordingHolds.Limits(hold, judgement).Select(check => new TraceLimit(check.Quantity, check.Min, check.Max))]);
}

/// <param name="Number">As on the printed report.</param>
/// <param name="Step">Its code; <paramref name="Words"/> is how it is said.</param>
internal sealed record TraceHold(int Number, string Step, string Words, double From, double To, IReadOnlyList<TraceLimit> Limits);

/// <param name="Quantity">Code of the reading that it limits.</param>
internal sealed record TraceLimit(string Quantity, double? Min, double? Max);
