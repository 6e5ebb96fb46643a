using System;
using System.CommandLine;
using System.Linq;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;

namespace LoggerBox.App.Console;

/// <summary>Finds what a WHAT means (a job or session of the archive by its id, or a trace file), and judges it.</summary>
internal sealed class SubjectReading(Terminal terminal)
{
    private readonly Argument<string> what = SharedOptions.What();
    private readonly Option<string?> namedSheet = SharedOptions.Sheet();
    private readonly Option<string?> archive = SharedOptions.Archive();
    private readonly Option<PressureUnit?> unit = SharedOptions.Unit();
    private readonly TraceOptions trace = new();

    public void AddTo(Command verb)
    {
        verb.Arguments.Add(what);
        AddSharedTo(verb);
        trace.AddTo(verb);
    }

    /// <summary>For a verb that names two subjects of its own.</summary>
    public void AddOptionsTo(Command verb)
    {
        AddSharedTo(verb);
        trace.AddRangesTo(verb);
    }

    private void AddSharedTo(Command verb)
    {
        verb.Options.Add(namedSheet);
        verb.Options.Add(unit);
        verb.Options.Add(archive);
    }

    public (Subject Subject, Judgement Judgement) Judged(ParseResult line) => Judged(line, line.GetRequiredValue(what));

    /// <param name="otherwise">The pressure unit where none is named; null: the sheet's.</param>
    public (Subject Subject, Judgement Judgement) Judged(ParseResult line, string word, PressureUnit? otherwise = null)
    {
        Subject? archived = RowId.IsJob(word) || RowId.IsSession(word) ? Archived(line, word) : null;
        DataSheet sheet = SheetOf(line, archived, word);
        Subject subject = archived ?? new Subject(word, [TraceReading.Read(trace.Source(line, word), SheetPlan.Make(sheet), terminal)]);
        return (subject, Judge.Of(subject.Sessions, sheet, subject.Facts, line.GetValue(unit) ?? otherwise ?? sheet.Unit));
    }

    /// <summary>The recordings alone, with the plan that a named sheet gives.</summary>
    public (Subject Subject, PlanRecord Plan) Recorded(ParseResult line)
    {
        string word = line.GetRequiredValue(what);
        PlanRecord plan = line.GetValue(namedSheet) is string path ? SheetPlan.Make(DataSheetReader.Read(path)) : new PlanRecord();
        Subject subject = RowId.IsJob(word) || RowId.IsSession(word) ? Archived(line, word) : new Subject(word, [TraceReading.Read(trace.Source(line, word), plan, terminal)]);
        return (subject, plan);
    }

    /// <summary>The sheet that is named, or the job's own.</summary>
    private DataSheet SheetOf(ParseResult line, Subject? subject, string word)
    {
        if (line.GetValue(namedSheet) is string path)
        {
            return DataSheetReader.Read(path);
        }

        return (subject?.Job is { } job ? OwnSheet(job) : null) ?? throw new UserErrorException(Messages.NoSheet(subject?.Title ?? word));
    }

    /// <summary>The sheet that the job was written with, or one without any limit.</summary>
    public static DataSheet SheetOrBlank(Job job) => OwnSheet(job) ?? new DataSheet { FileName = "" };

    private static DataSheet? OwnSheet(Job job) =>
        job.Details.SheetText.Length > 0 ? DataSheetReader.Parse(job.Details.SheetText, job.Details.SheetName) : null;

    private Subject Archived(ParseResult line, string id)
    {
        using ArchiveFile file = ArchiveFile.OpenForReading(line.GetValue(archive) ?? ArchiveFile.DefaultPath);
        return RowId.IsJob(id) ? OfJob(file, file.Jobs.Load(id)) : OfSession(file, id);
    }

    public static Subject OfJob(ArchiveFile file, Job job) => job.SessionIds.Count > 0
        ? new Subject($"job {job.Id}", InOrderOfTime([.. job.SessionIds.Select(session => RecordingOf(file, session))]), job)
        : throw new UserErrorException(Messages.JobEmpty(job.Id));

    /// <summary>The last good hold of a step counts, whatever was added to the job first. An undated session leaves the order of adding.</summary>
    private static SubjectRecording[] InOrderOfTime(SubjectRecording[] recordings) => Array.TrueForAll(recordings, recording => recording.Row?.Start is not null)
        ? [.. recordings.OrderBy(recording => recording.Row!.Start)]
        : recordings;

    private static Subject OfSession(ArchiveFile file, string id)
    {
        SubjectRecording recording = RecordingOf(file, id);
        return new Subject(recording.Name, [recording]);
    }

    private static SubjectRecording RecordingOf(ArchiveFile file, string id)
    {
        LoadedSession loaded = file.Sessions.Load(id);
        return new SubjectRecording($"session {loaded.Row.Id}", loaded.Bytes, loaded.Session, loaded.Row);
    }
}
