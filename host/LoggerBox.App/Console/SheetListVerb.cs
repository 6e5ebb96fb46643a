using System.CommandLine;
using System.Linq;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Report;
using LoggerBox.Host.Subjects;

namespace LoggerBox.App.Console;

/// <summary>The versions of data sheets in the archive: each job keeps the text that it was written with.</summary>
internal static class SheetListVerb
{
    public static Command Declare(Terminal terminal)
    {
        var archive = SharedOptions.Archive();
        var json = SharedOptions.Json();
        var verb = new Command("list", Messages.SheetListVerb) { archive, json };
        verb.SetAction(line =>
        {
            using ArchiveFile file = ArchiveFile.OpenForReading(line.GetValue(archive) ?? ArchiveFile.DefaultPath);
            SheetVersion[] versions = [.. file.Jobs.All()
                .Where(job => job.Details.SheetText.Length > 0)
                .GroupBy(job => (job.Details.SheetName, Version: DataSheetReader.VersionOf(job.Details.SheetText)))
                .Select(jobs => new SheetVersion(jobs.Key.SheetName, jobs.Key.Version, jobs.OrderBy(job => job.Opened).ToArray()))
                .OrderBy(version => version.Name, System.StringComparer.Ordinal).ThenBy(version => version.Jobs[0].Opened)];
            Print(terminal, versions, line.GetValue(json));
            return CommandLine.Done;
        });
        return verb;
    }

    private static void Print(Terminal terminal, SheetVersion[] versions, bool json)
    {
        if (json)
        {
            ListingJson.WriteArray(terminal.Out, versions, (writer, version) =>
            {
                writer.WriteStartObject();
                writer.WriteString("name", version.Name);
                writer.WriteString("version", version.Version);
                writer.WriteStrings("jobs", [.. version.Jobs.Select(job => job.Id)]);
                writer.WriteEndObject();
            });
            return;
        }

        var table = new TextTable("llll");
        table.Add("sheet", "version", "since", "jobs");
        foreach (SheetVersion version in versions)
        {
            table.Add(PlainText.Of(version.Name), version.Version, JobWords.Moment(version.Jobs[0].Opened), string.Join(' ', version.Jobs.Select(job => job.Id)));
        }

        table.WriteTo(terminal.Out, "");
    }

    private sealed record SheetVersion(string Name, string Version, Job[] Jobs);
}
