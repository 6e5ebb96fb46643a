using System;
using System.CommandLine;
using System.IO;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;

namespace LoggerBox.App.Console;

/// <summary>Writes a work order: what a person knows that no sensor does.</summary>
internal static class JobNewVerb
{
    public static Command Declare(Terminal terminal)
    {
        var truck = Text("--truck", Messages.TruckOption, "NAME");
        var serial = Text("--serial", Messages.SerialOption, "TEXT");
        var hours = Number("--hours", Messages.HoursOption, "H", 0, 1_000_000);
        var fuel = Text("--fuel", Messages.FuelOption, "NAME");
        var complaint = Text("--complaint", Messages.ComplaintOption, "TEXT");
        var technician = Text("--technician", Messages.TechnicianOption, "NAME");
        var sheet = SharedOptions.Sheet();
        var altitude = Number("--altitude", Messages.AltitudeOption, "M", -450, 6000);
        var air = Number("--air", Messages.AirOption, "C", -50, 80);
        var oilLevel = Text("--oil-level", Messages.OilLevelOption, "TEXT");
        var oilLook = Text("--oil-look", Messages.OilLookOption, "TEXT");
        var oil = Number("--oil", Messages.OilOption, "C", -50, 200);
        var oilRead = Text("--oil-read", Messages.OilReadOption, "TEXT");
        var archive = SharedOptions.Archive();
        var json = SharedOptions.Json();
        var verb = new Command("new", Messages.JobNewVerb)
        {
            truck, serial, hours, fuel, complaint, technician, sheet, altitude, air, oilLevel, oilLook, oil, oilRead, archive, json,
        };
        verb.Validators.Add(words =>
        {
            if (new[] { truck, serial, complaint, sheet }.All(option => string.IsNullOrWhiteSpace(words.GetValue(option))))
            {
                words.AddError(JobMessages.NothingWritten());
            }
        });
        verb.SetAction(line =>
        {
            (string sheetName, string sheetText, string sheetTruck) = ReadSheet(line.GetValue(sheet));
            var details = new JobDetails(
                line.GetValue(truck) ?? sheetTruck,
                line.GetValue(serial) ?? "",
                line.GetValue(hours),
                line.GetValue(fuel) ?? "",
                line.GetValue(complaint) ?? "",
                line.GetValue(technician) ?? "",
                sheetName,
                sheetText,
                line.GetValue(altitude),
                line.GetValue(air),
                line.GetValue(oilLevel) ?? "",
                line.GetValue(oilLook) ?? "",
                line.GetValue(oil),
                line.GetValue(oilRead) ?? "");
            using ArchiveFile file = ArchiveFile.Open(line.GetValue(archive) ?? ArchiveFile.DefaultPath);
            string id = file.Jobs.Create(details, DateTimeOffset.Now);
            JobShowVerb.Print(terminal, file, file.Jobs.Load(id), line.GetValue(json));
            return CommandLine.Done;
        });
        return verb;
    }

    /// <summary>The sheet's text is kept with the job: what was judged by stays, whatever becomes of the file.</summary>
    private static (string Name, string Text, string Truck) ReadSheet(string? path)
    {
        if (path is null)
        {
            return ("", "", "");
        }

        DataSheet sheet = DataSheetReader.Read(path);
        return (sheet.FileName, File.ReadAllText(path), sheet.Truck);
    }

    private static Option<string?> Text(string name, string description, string shape) => new(name) { Description = description, HelpName = shape };

    private static Option<double?> Number(string name, string description, string shape, double lowest, double highest)
    {
        var option = new Option<double?>(name) { Description = description, HelpName = shape };
        option.Validators.Add(result =>
        {
            // Written so that NaN fails.
            if (result.Errors.GetEnumerator().MoveNext() || result.GetValueOrDefault<double?>() is not double value || (value >= lowest && value <= highest))
            {
                return;
            }

            result.AddError(Messages.OutOfRange(name, lowest, highest));
        });
        return option;
    }
}
