using System;
using System.CommandLine;
using System.Linq;
using System.Security.Cryptography;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Archive.JobFiles;
using LoggerBox.Host.Report;
using LoggerBox.Host.Subjects;
using LoggerBox.Host.Units;

namespace LoggerBox.App.Console;

/// <summary>A session of the archive as a trace file that any other program reads, or a whole job as one file.</summary>
internal static class ExportVerb
{
    public static Command Declare(Terminal terminal)
    {
        var what = SharedOptions.What();
        var file = SharedOptions.OutFile(Messages.ExportOutOption);
        var unit = SharedOptions.Unit();
        var archive = SharedOptions.Archive();
        var verb = new Command("export", Messages.ExportVerb) { what, file, unit, archive };
        verb.SetAction(line =>
        {
            string path = line.GetRequiredValue(file);
            string word = line.GetRequiredValue(what);
            bool isJobFile = HasEnding(path, JobFileFormat.Extension);
            if (!isJobFile && !HasEnding(path, ".csv") && !HasEnding(path, ".parquet"))
            {
                throw new UserErrorException(TraceMessages.ExportEnding(path), usage: true);
            }

            if (isJobFile && !RowId.IsJob(word))
            {
                throw new UserErrorException(Messages.JobFileOfAJob(word), usage: true);
            }

            if (isJobFile && line.GetValue(unit) is not null)
            {
                throw new UserErrorException(Messages.NothingToJobFile("--unit", path), usage: true);
            }

            using ArchiveFile open = ArchiveFile.OpenForReading(line.GetValue(archive) ?? ArchiveFile.DefaultPath);
            if (isJobFile)
            {
                WholeFile.Write(path, file => JobFileWriter.Write(open, word, file));
            }
            else
            {
                WriteTrace(open, word, path, line.GetValue(unit));
            }

            terminal.Out.WriteLine(Messages.Wrote(path));
            return CommandLine.Done;
        });
        return verb;
    }

    private static void WriteTrace(ArchiveFile archive, string what, string path, PressureUnit? wanted)
    {
        LoadedSession loaded = archive.Sessions.Load(SessionOf(archive, what));
        PressureUnit unit = wanted ?? UsualUnit.Of(archive.Jobs.All().Where(job => job.SessionIds.Contains(loaded.Row.Id)));
        string title = $"session {loaded.Row.Id}, {loaded.Row.Source}, {(loaded.Row.Start is DateTimeOffset start ? JobWords.Moment(start) : "undated")}";
        if (HasEnding(path, ".parquet"))
        {
            string fingerprint = Convert.ToHexStringLower(SHA256.HashData(loaded.Bytes));
            WholeFile.Write(path, file => ParquetExport.Write(file, loaded.Session, loaded.Row.Id, title, fingerprint, unit));
        }
        else
        {
            WholeFile.Write(path, CsvExport.Render(loaded.Session, title, unit));
        }
    }

    private static bool HasEnding(string path, string ending) => path.EndsWith(ending, StringComparison.OrdinalIgnoreCase);

    /// <summary>A trace file is one recording: of a job of several the session must be named.</summary>
    private static string SessionOf(ArchiveFile archive, string what)
    {
        if (!RowId.IsJob(what))
        {
            return what;
        }

        Job job = archive.Jobs.Load(what);
        return job.SessionIds.Count == 1 ? job.SessionIds[0] : throw new UserErrorException(Messages.NameOneSession(job.Id, job.SessionIds));
    }
}
