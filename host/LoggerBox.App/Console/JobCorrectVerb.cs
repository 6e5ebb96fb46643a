using System;
using System.Collections.Generic;
using System.CommandLine;
using System.Globalization;
using System.Linq;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Report;

namespace LoggerBox.App.Console;

/// <summary>Puts a work order right, or dates a session: what was written stays, the correction is a new row with who and when.</summary>
internal static class JobCorrectVerb
{
    private const double MostHours = 1_000_000;

    public static Command Declare(Terminal terminal)
    {
        var what = SharedOptions.NotEmpty(new Argument<string>("WHAT") { Description = JobMessages.CorrectArgument });
        Option<string?>[] texts =
        [
            Text(JobField.Truck, Messages.TruckOption), Text(JobField.Serial, Messages.SerialOption), Text(JobField.Complaint, Messages.ComplaintOption),
            Text(JobField.Cause, Messages.FoundOption), Text(JobField.Correction, Messages.CorrectionOption),
        ];
        var hours = new Option<double?>("--" + JobField.Hours) { Description = Messages.HoursOption, HelpName = "H" };
        hours.Validators.Add(result =>
        {
            // Written so that NaN fails.
            if (!result.Errors.Any() && result.GetValueOrDefault<double?>() is double value && !(value is >= 0 and <= MostHours))
            {
                result.AddError(Messages.OutOfRange(hours.Name, 0, MostHours));
            }
        });
        var recorded = SharedOptions.NotEmpty(new Option<string?>("--recorded") { Description = JobMessages.RecordedOption, HelpName = "MOMENT" });
        var by = SharedOptions.NotEmpty(new Option<string>("--by") { Description = JobMessages.CorrectedByOption, HelpName = "NAME", Required = true });
        var reason = new Option<string?>("--reason") { Description = JobMessages.ReasonOption, HelpName = "TEXT" };
        var archive = SharedOptions.Archive();
        var verb = new Command("correct", JobMessages.CorrectVerb) { what, hours, recorded, by, reason, archive };
        foreach (Option<string?> text in texts)
        {
            verb.Options.Add(text);
        }

        verb.SetAction(line =>
        {
            string id = line.GetRequiredValue(what);
            (string Field, string Value)[] fields = [.. texts.Where(text => line.GetValue(text) is not null).Select(text => (text.Name[2..], line.GetValue(text)!)), .. Hours(line.GetValue(hours))];
            DateTimeOffset? start = line.GetValue(recorded) is string moment ? Moment(moment) : null;
            Demand(id, fields.Length > 0, start is not null);
            using ArchiveFile file = ArchiveFile.OpenExisting(line.GetValue(archive) ?? ArchiveFile.DefaultPath);
            (string name, string why) = (line.GetRequiredValue(by), line.GetValue(reason) ?? "");
            if (start is DateTimeOffset dated)
            {
                file.Corrections.DateSession(id, dated, name, why, DateTimeOffset.Now);
                SessionsVerb.Print(terminal, file, [file.Sessions.Find(id)]);
            }
            else
            {
                file.Corrections.CorrectJob(id, fields, name, why, DateTimeOffset.Now);
                terminal.Out.WriteLine(PlainText.Of(JobMessages.Corrected(file.Jobs.Load(id).Id, fields, name)));
            }

            return CommandLine.Done;
        });
        return verb;
    }

    private static void Demand(string id, bool hasFields, bool isDated)
    {
        if (RowId.IsSession(id) ? !isDated || hasFields : !hasFields || isDated)
        {
            throw new UserErrorException(RowId.IsSession(id) ? JobMessages.OnlyDate(id) : JobMessages.OnlyFields(id), usage: true);
        }
    }

    private static (string, string)[] Hours(double? hours) => hours is double value ? [(JobField.Hours, value.ToString(CultureInfo.InvariantCulture))] : [];

    private static DateTimeOffset Moment(string text) =>
        DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeLocal, out DateTimeOffset moment) && moment.ToUnixTimeSeconds() is > 0 and <= uint.MaxValue
            ? moment
            : throw new UserErrorException(JobMessages.NoMoment(text), usage: true);

    private static Option<string?> Text(string field, string description) => new("--" + field) { Description = description, HelpName = "TEXT" };
}
