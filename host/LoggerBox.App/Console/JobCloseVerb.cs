using System;
using System.CommandLine;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Report;
using LoggerBox.Host.Subjects;

namespace LoggerBox.App.Console;

/// <summary>Closes a work order: with a release of the truck, or plainly without one.</summary>
internal static class JobCloseVerb
{
    public static Command Declare(Terminal terminal)
    {
        var job = JobVerb.JobArgument();
        var cause = new Option<string?>("--cause") { Description = Messages.FoundOption, HelpName = "TEXT" };
        var correction = new Option<string?>("--correction") { Description = Messages.CorrectionOption, HelpName = "TEXT" };
        var by = SharedOptions.NotEmpty(new Option<string?>("--released-by") { Description = JobMessages.ReleasedByOption, HelpName = "NAME" });
        var notReleased = new Option<bool>("--not-released") { Description = JobMessages.NotReleasedOption };
        var archive = SharedOptions.Archive();
        var verb = new Command("close", Messages.JobCloseVerb) { job, cause, correction, by, notReleased, archive };
        verb.Validators.Add(words =>
        {
            if (words.GetValue(notReleased) && words.GetValue(by) is not null)
            {
                words.AddError(JobMessages.ReleasedOrNot);
            }
        });
        verb.SetAction(line =>
        {
            using ArchiveFile file = ArchiveFile.OpenExisting(line.GetValue(archive) ?? ArchiveFile.DefaultPath);
            (string id, string found, string done) = (line.GetRequiredValue(job), line.GetValue(cause) ?? "", line.GetValue(correction) ?? "");
            if (line.GetValue(notReleased))
            {
                file.Jobs.Close(id, DateTimeOffset.Now, found, done);
            }
            else
            {
                RefuseStandingSuspect(file, file.Jobs.Load(id), done);
                file.Jobs.Release(id, line.GetValue(by), DateTimeOffset.Now, found, done);
            }

            Job closed = file.Jobs.Load(id);
            terminal.Out.WriteLine(closed.Release.Release is { } release ? JobMessages.Released(closed.Id, PlainText.Of(release.By)) : JobMessages.ClosedUnreleased(closed));
            return CommandLine.Done;
        });
        return verb;
    }

    /// <summary>A truck that nobody repaired, and whose test names a suspect, goes back to work only with a word on why.</summary>
    private static void RefuseStandingSuspect(ArchiveFile file, Job job, string correction)
    {
        if (correction.Length > 0 || job.Correction.Length > 0 || job.Sessions.Count == 0 || job.JudgedRole == SessionRole.After || ArchivedSubjects.OwnSheet(job) is not DataSheet sheet)
        {
            return;
        }

        if (ArchivedSubjects.OfJob(file, job).Judged(sheet, sheet.Unit).Suspects is [var suspect, ..])
        {
            throw new UserErrorException(JobMessages.SuspectStands(job, CauseWords.Of(suspect.Code)));
        }
    }
}
