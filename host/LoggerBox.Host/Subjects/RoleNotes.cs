using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Subjects;

/// <summary>What a reader must know of a job whose sessions were recorded before and after a repair.</summary>
internal static class RoleNotes
{
    public static IEnumerable<ValidityNote> Of(Job job, Subject whole)
    {
        if (JobWords.IsCorrectedUnmeasured(job))
        {
            yield return Note(Outcome.OfBefore, "A correction is written, and no session of after it is in this job: what is shown was measured before the correction, as far as anybody said. Test it again, and add the session with --as after.");
        }
        else if (job.JudgedRole == SessionRole.Before)
        {
            yield return Note(Outcome.OfBefore, "All of this was measured before the repair: how the truck is after it is not known. Test it again, and add the session with --as after.");
        }

        if (job.JudgedRole != SessionRole.Any && job.SessionIdsOf(SessionRole.Any) is { Count: > 0 } others)
        {
            yield return Note(
                Outcome.RolesInDoubt,
                $"Not judged, because nobody said whether it was before or after the repair: {string.Join(", ", others)}. Say it with `loggerbox job add {job.Id} {string.Join(' ', others)} --as before`, or --as after.");
        }

        if (Contradiction(whole) is (SubjectRecording before, SubjectRecording after))
        {
            yield return Note(
                Outcome.RolesInDoubt,
                $"The dates contradict the roles: {Dated(before)}, is later than {Dated(after)}. A logger's clock or a role is wrong; judged is by the roles. Put the date right with `loggerbox job correct SESSION --recorded`, or the role with `loggerbox job add`.");
        }
    }

    /// <summary>The latest of before and the earliest of after, where that one is not later.</summary>
    private static (SubjectRecording Before, SubjectRecording After)? Contradiction(Subject whole) =>
        whole.Before.Where(one => one.Row?.Start is not null).MaxBy(one => one.Row!.Start) is { } before
        && whole.Recordings.Where(one => one.Row?.Start is not null).MinBy(one => one.Row!.Start) is { } after
        && before.Row!.Start > after.Row!.Start
            ? (before, after)
            : null;

    private static string Dated(SubjectRecording one) => FormattableString.Invariant($"{one.Name} on {one.Row!.Start:yyyy-MM-dd HH:mm}");

    private static ValidityNote Note(string code, string text) => new(code, ValidityEffect.Note, Step.None, text);
}
