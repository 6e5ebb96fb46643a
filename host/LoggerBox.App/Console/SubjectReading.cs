using System.CommandLine;
using System.Linq;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;

namespace LoggerBox.App.Console;

/// <summary>Finds what a WHAT means: a job or session of the archive by its id, or a trace file.</summary>
internal sealed class SubjectReading(Terminal terminal)
{
    public Argument<string> What { get; } = SharedOptions.What();

    public Option<string?> Sheet { get; } = SharedOptions.Sheet();

    public Option<string?> Archive { get; } = SharedOptions.Archive();

    public TraceOptions Trace { get; } = new();

    public void AddTo(Command verb)
    {
        verb.Arguments.Add(What);
        verb.Options.Add(Sheet);
        verb.Options.Add(Archive);
        Trace.AddTo(verb);
    }

    public Subject Read(ParseResult line)
    {
        string what = line.GetRequiredValue(What);
        if (!RowId.IsJob(what) && !RowId.IsSession(what))
        {
            return TraceReading.Read(Trace.Source(line, what), terminal);
        }

        using ArchiveFile archive = ArchiveFile.OpenExisting(line.GetValue(Archive) ?? ArchiveFile.DefaultPath);
        return RowId.IsJob(what) ? JobOf(archive, what) : new Subject($"session {what}", [RecordingOf(archive, what)]);
    }

    /// <summary>The sheet that is named, or the job's own.</summary>
    public DataSheet ReadSheet(ParseResult line, Subject subject)
    {
        if (line.GetValue(Sheet) is string path)
        {
            return DataSheetReader.Read(path);
        }

        if (subject.Job is { Details.SheetText.Length: > 0 } job)
        {
            return DataSheetReader.Parse(job.Details.SheetText, job.Details.SheetName);
        }

        throw new UserErrorException(Messages.NoSheet(subject.Title));
    }

    private static Subject JobOf(ArchiveFile archive, string id)
    {
        Job job = archive.Jobs.Load(id);
        if (job.SessionIds.Count == 0)
        {
            throw new UserErrorException(Messages.JobEmpty(job.Id));
        }

        return new Subject($"job {job.Id}", [.. job.SessionIds.Select(session => RecordingOf(archive, session))], job);
    }

    private static SubjectRecording RecordingOf(ArchiveFile archive, string id)
    {
        LoadedSession loaded = archive.Sessions.Load(id);
        return new SubjectRecording($"session {loaded.Row.Id}", loaded.Bytes, loaded.Session, loaded.Row);
    }
}
