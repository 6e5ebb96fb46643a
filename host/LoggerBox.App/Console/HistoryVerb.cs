using System;
using System.Collections.Generic;
using System.CommandLine;
using System.Globalization;
using System.Linq;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Comparing;
using LoggerBox.Host.Report;
using LoggerBox.Host.Subjects;
using LoggerBox.Host.Units;

namespace LoggerBox.App.Console;

/// <summary>One truck over the years: each reading of all its jobs, its change and its drift.</summary>
internal static class HistoryVerb
{
    public static Command Declare(Terminal terminal)
    {
        var serial = SharedOptions.NotEmpty(new Argument<string>("TRUCK") { Description = Messages.HistoryArgument });
        var unit = SharedOptions.Unit();
        var archive = SharedOptions.Archive();
        var json = SharedOptions.Json();
        var verb = new Command("history", Messages.HistoryVerb) { serial, unit, archive, json };
        verb.SetAction(line =>
        {
            string truck = line.GetRequiredValue(serial);
            (Visit[] visits, PressureUnit usual) = Visits(line.GetValue(archive) ?? ArchiveFile.DefaultPath, truck);
            PressureUnit shown = line.GetValue(unit) ?? usual;
            IReadOnlyList<ReadingHistory> history = TruckHistory.Of(visits);
            if (line.GetValue(json))
            {
                ListingJson.WriteArray(terminal.Out, history, (writer, one) => ListingJson.History(writer, one, shown));
            }
            else
            {
                Print(terminal, truck, visits, history, shown);
            }

            return CommandLine.Done;
        });
        return verb;
    }

    private static (Visit[] Visits, PressureUnit Unit) Visits(string path, string serial)
    {
        using ArchiveFile file = ArchiveFile.OpenForReading(path);
        Job[] jobs = [.. TruckVisits.Jobs(file, serial).Where(job => job.SessionIds.Count > 0)];
        return jobs.Length >= 2 ? ([.. TruckVisits.Of(file, jobs)], UsualUnit.Of(jobs)) : throw new UserErrorException(Messages.HistoryTooShort(file.Path, serial, jobs.Length));
    }

    private static void Print(Terminal terminal, string truck, Visit[] visits, IReadOnlyList<ReadingHistory> history, PressureUnit unit)
    {
        string[] names = [.. visits.OrderBy(visit => visit.Date).Select(visit => $"{visit.Id} ({visit.Date:yyyy-MM-dd}{(visit.Hours is double hours ? string.Create(CultureInfo.InvariantCulture, $", {hours:0} h") : "")})")];
        terminal.Out.WriteLine(PlainText.Of(Messages.HistoryOf(truck, names)));
        var table = new TextTable("llrrrlrl");
        table.Add("", "", "first", "last", "change", "±", "in 1000 h", "");
        foreach (ReadingHistory one in history)
        {
            (string words, string code, double scale) = HistoryWords.Of(one.Place, unit);
            table.Add(
                words,
                code,
                Figure.Of(one.Readings[0].Reading.Value * scale, code),
                Figure.Of(one.Readings[^1].Reading.Value * scale, code),
                Figure.Of(one.Change * scale, code),
                Figure.Of(one.Uncertainty * scale, code),
                one.Slope is double slope ? Figure.Of(slope * scale, code) : "-",
                HistoryWords.Verdict(one));
        }

        table.WriteTo(terminal.Out);
    }
}
