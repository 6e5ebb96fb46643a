using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Report;
using LoggerBox.Host.Sessions;
using LoggerBox.Host.Subjects;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Shop.Comparing;

/// <summary>The filling of one clutch, before and after: both are laid over each other from the gear's change.</summary>
/// <param name="Words">How long each took.</param>
internal sealed record ComparedEngagement(string Gear, string Words, FilledClutch Before, FilledClutch After)
{
    public static IReadOnlyList<ComparedEngagement> Of(ComparedSubjects compared) =>
        [.. ((Gear[])[Protocol.Rules.Gear.Forward, Protocol.Rules.Gear.Reverse]).Select(gear => Of(compared, gear)).OfType<ComparedEngagement>()];

    private static ComparedEngagement? Of(ComparedSubjects compared, Gear gear) =>
        FilledClutch.Of(compared.Before.Subject, gear) is { } before && FilledClutch.Of(compared.After.Subject, gear) is { } after
            ? new ComparedEngagement(
                StepCodes.Text(gear == Protocol.Rules.Gear.Forward ? Step.IdleForward : Step.IdleReverse)[^1..],
                $"Engaging {StepWords.Of(gear)}: before {before.Took}, after {after.Took}",
                before,
                after)
            : null;
}

/// <param name="From">The gear's change, seconds from the session's start.</param>
/// <param name="Total">Until 90 % of the settled pressure, seconds; null where the clutch never filled.</param>
internal sealed record FilledClutch(string Session, double From, double? Total)
{
    public string Took => Total is double total ? Figure.WithUnit(total, "s") : "never filled";

    public static FilledClutch? Of(Subject subject, Gear gear)
    {
        if (EngagementReadings.Shown(subject.Sessions, gear) is not EngagementRecord record)
        {
            return null;
        }

        SubjectRecording recording = subject.Recordings.First(one => one.Session.Engagements.Contains(record));
        RecordedSession session = recording.Session;
        return new FilledClutch(
            recording.Row!.Id,
            session.SecondsAt(record.StartMicroseconds),
            record.NeverFilled ? null : record.TotalMilliseconds / 1000.0);
    }
}
