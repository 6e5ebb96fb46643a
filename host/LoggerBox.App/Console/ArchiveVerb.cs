using System.Collections.Generic;
using System.CommandLine;
using System.Linq;
using LoggerBox.Host;
using LoggerBox.Host.Archive;

namespace LoggerBox.App.Console;

/// <summary>Checks the archive, and copies it.</summary>
internal static class ArchiveVerb
{
    public static Command Declare(Terminal terminal) => new("archive", ArchiveMessages.Verb) { Check(terminal), Backup(terminal) };

    private static Command Check(Terminal terminal)
    {
        var archive = SharedOptions.Archive();
        var json = SharedOptions.Json();
        var verb = new Command("check", ArchiveMessages.CheckVerb) { archive, json };
        verb.SetAction(line =>
        {
            using ArchiveFile file = ArchiveFile.OpenForReading(line.GetValue(archive) ?? ArchiveFile.DefaultPath);
            List<ArchiveDamage> damages = [];
            foreach (ArchiveDamage damage in ArchiveCheck.Of(file, (done, whole) => terminal.Progress.Show(ProgressMessages.CheckingArchive, done, whole)))
            {
                damages.Add(damage);
                if (!line.GetValue(json))
                {
                    terminal.Progress.Wipe();
                    terminal.Out.WriteLine($"{damage.Where}: {damage.What}");
                }
            }

            terminal.Progress.Wipe();
            if (line.GetValue(json))
            {
                ListingJson.WriteArray(terminal.Out, damages, static (writer, damage) =>
                {
                    writer.WriteStartObject();
                    writer.WriteString("where", damage.Where);
                    writer.WriteString("what", damage.What);
                    writer.WriteEndObject();
                });
            }

            if (damages.Count > 0)
            {
                throw new UserErrorException(ArchiveMessages.Damaged(file.Path, damages.Count));
            }

            if (!line.GetValue(json))
            {
                terminal.Out.WriteLine(ArchiveMessages.Sound(file.Path, file.Sessions.All().Count, file.Jobs.All().Count));
            }

            return CommandLine.Done;
        });
        return verb;
    }

    private static Command Backup(Terminal terminal)
    {
        var copy = new Argument<string>("FILE") { Description = ArchiveMessages.BackupFile };
        var archive = SharedOptions.Archive();
        var verb = new Command("backup", ArchiveMessages.BackupVerb) { copy, archive };
        verb.SetAction(line =>
        {
            using ArchiveFile file = ArchiveFile.OpenForReading(line.GetValue(archive) ?? ArchiveFile.DefaultPath);
            ArchiveBackup.Write(file, line.GetRequiredValue(copy));
            terminal.Out.WriteLine(ArchiveMessages.Copied(file.Path, ArchiveFile.NameOf(line.GetRequiredValue(copy)), file.Sessions.All().Count, file.Jobs.All().Count));
            return CommandLine.Done;
        });
        return verb;
    }
}
