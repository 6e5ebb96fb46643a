using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Report;

/// <summary>What belongs to one recording of a judgement: a job joins several, each with its own zero of time.</summary>
public static class RecordingHolds
{
    /// <summary>The holds that count and whose record is in this recording.</summary>
    public static IReadOnlyList<JudgedHold> Of(RecordedSession session, Judgement judgement)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(judgement);
        bool IsHere(JudgedHold hold) => session.Holds.Any(record =>
            Math.Abs(session.SecondsAt(record.StartMicroseconds) - hold.StartSeconds) < 1e-6 && Math.Abs(record.DurationMilliseconds / 1e3 - hold.DurationSeconds) < 1e-6);
        return [.. judgement.Holds.Where(hold => hold.Counts && IsHere(hold))];
    }

    /// <summary>The limits that a hold's own readings were held against.</summary>
    public static IEnumerable<Check> Limits(JudgedHold hold, Judgement judgement)
    {
        ArgumentNullException.ThrowIfNull(judgement);
        return judgement.Checks.Where(check => check.Step == StepCodes.Text(hold.Step) && ReadingTable.ReadingOf(hold, check.Quantity) is not null && (check.Min ?? check.Max) is not null);
    }
}
