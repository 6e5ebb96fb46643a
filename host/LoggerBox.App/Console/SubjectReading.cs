using System;
using System.CommandLine;
using System.Linq;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Report;
using LoggerBox.Host.Subjects;
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

    /// <summary>With all that a report says of it.</summary>
    public ReportDocument Reported(ParseResult line)
    {
        (Subject subject, Judgement judgement, DataSheet sheet) = Judge(line, line.GetRequiredValue(what), null);
        return subject.Report(judgement, sheet, DateTimeOffset.Now);
    }

    public (Subject Subject, Judgement Judgement) Judged(ParseResult line) => Judged(line, line.GetRequiredValue(what));

    /// <param name="otherwise">The pressure unit where none is named; null: the sheet's.</param>
    public (Subject Subject, Judgement Judgement) Judged(ParseResult line, string word, PressureUnit? otherwise = null)
    {
        (Subject subject, Judgement judgement, _) = Judge(line, word, otherwise);
        return (subject, judgement);
    }

    private (Subject Subject, Judgement Judgement, DataSheet Sheet) Judge(ParseResult line, string word, PressureUnit? otherwise)
    {
        Subject? archived = RowId.IsJob(word) || RowId.IsSession(word) ? Archived(line.GetValue(archive) ?? ArchiveFile.DefaultPath, word) : null;
        if (archived is null && line.GetValue(namedSheet) is null)
        {
            // A file that is not there, or no trace, is said before that it has no sheet.
            TraceReading.Read(trace.Source(line, word), new PlanRecord(), terminal);
        }

        DataSheet sheet = SheetOf(line, archived, word);
        Subject subject = archived ?? new Subject(word, [TraceReading.Read(trace.Source(line, word), SheetPlan.Make(sheet), terminal)]);
        PressureUnit shown = line.GetValue(unit) ?? otherwise ?? sheet.Unit;
        return (subject, terminal.Progress.During(ProgressMessages.Judging(subject.Title), () => subject.Judged(sheet, shown)), sheet);
    }

    /// <summary>The recordings alone, with the plan that a named sheet gives.</summary>
    public (Subject Subject, PlanRecord Plan) Recorded(ParseResult line)
    {
        string word = line.GetRequiredValue(what);
        PlanRecord plan = line.GetValue(namedSheet) is string path ? SheetPlan.Make(DataSheetReader.Read(path)) : new PlanRecord();
        Subject subject = RowId.IsJob(word) || RowId.IsSession(word) ? Archived(line.GetValue(archive) ?? ArchiveFile.DefaultPath, word) : new Subject(word, [TraceReading.Read(trace.Source(line, word), plan, terminal)]);
        return (subject, plan);
    }

    /// <summary>The sheet that is named, or the job's own.</summary>
    private DataSheet SheetOf(ParseResult line, Subject? subject, string word)
    {
        if (line.GetValue(namedSheet) is string path)
        {
            return DataSheetReader.Read(path);
        }

        return ArchivedSubjects.OwnSheet(subject?.Job) ?? throw new UserErrorException(Messages.NoSheet(subject?.Title ?? word));
    }

    private Subject Archived(string path, string id) => terminal.Progress.During(ProgressMessages.ReadingArchived(id), () =>
    {
        using ArchiveFile file = ArchiveFile.OpenForReading(path);
        return RowId.IsJob(id) ? ArchivedSubjects.OfJob(file, file.Jobs.Load(id)) : ArchivedSubjects.OfSession(file, id);
    });
}
