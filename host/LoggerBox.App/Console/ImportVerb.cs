using System;
using System.CommandLine;
using System.IO;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Archive.JobFiles;
using LoggerBox.Host.Report;
using LoggerBox.Host.Subjects;
using LoggerBox.Protocol.Records;

namespace LoggerBox.App.Console;

/// <summary>A trace file of any instrument, or a job file of another archive, into the archive.</summary>
internal static class ImportVerb
{
    public static Command Declare(Terminal terminal)
    {
        var file = SharedOptions.NotEmpty(new Argument<string>("FILE") { Description = Messages.ImportArgument });
        var archive = SharedOptions.Archive();
        var trace = new TraceOptions();
        var verb = new Command("import", Messages.ImportVerb) { file, archive };
        trace.AddTo(verb);
        verb.SetAction(line =>
        {
            string path = line.GetRequiredValue(file);
            ArchiveFile Open() => ArchiveFile.Open(line.GetValue(archive) ?? ArchiveFile.DefaultPath);
            if (JobImport.IsJobFile(path))
            {
                if (trace.FirstGiven(line) is string option)
                {
                    throw new UserErrorException(Messages.NothingToJobFile(option, path), usage: true);
                }

                terminal.Out.WriteLine(Messages.ImportedJob(PlainText.Of(Path.GetFileName(path)), JobImport.Run(path, Open, (done, whole) => terminal.Progress.Show(ProgressMessages.Checking(Path.GetFileName(path)), done, whole))));
                return CommandLine.Done;
            }

            // Read whole before the archive is opened: a refused file leaves nothing behind.
            SubjectRecording recording = TraceReading.Read(trace.Source(line, path), new PlanRecord(), terminal);
            using ArchiveFile open = Open();
            AddedSession added = open.Sessions.Add(recording.Bytes, SessionOrigin.Imported, recording.Name, DateTimeOffset.Now);
            terminal.Out.WriteLine(Messages.Imported(PlainText.Of(recording.Name), added.Id, added.IsNew));
            return CommandLine.Done;
        });
        return verb;
    }
}
