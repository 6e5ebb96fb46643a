using System;
using System.Collections.Generic;
using System.CommandLine;
using System.Linq;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Judging.FromJobs;
using LoggerBox.Host.Report;
using LoggerBox.Host.Subjects;
using LoggerBox.Host.Units;

namespace LoggerBox.App.Console;

/// <summary>Draws limits from healthy jobs of one kind of truck.</summary>
internal static class SheetFromVerb
{
    public static Command Declare(Terminal terminal)
    {
        var jobs = new Argument<string[]>("JOB") { Description = Messages.SheetFromArgument, Arity = ArgumentArity.OneOrMore };
        var file = SharedOptions.OutFile(Messages.SheetOutOption);
        var unit = SharedOptions.Unit();
        var archive = SharedOptions.Archive();
        var verb = new Command("from", Messages.SheetFromVerb) { jobs, file, unit, archive };
        verb.SetAction(line =>
        {
            string[] ids = [.. line.GetRequiredValue(jobs)];
            string path = line.GetRequiredValue(file);
            List<(Subject Subject, DataSheet Sheet)> subjects = [.. Read(line.GetValue(archive) ?? ArchiveFile.DefaultPath, ids)];
            RefuseOtherTrucks(subjects);
            JobReadings[] readings = [.. subjects.Select(Healthy)];
            Job first = subjects[0].Subject.Job!;
            DataSheet sheet = subjects[0].Sheet;
            WholeFile.Write(path, DrawnSheet.Write(first.Details.Truck, first.Details.Fuel, new SharedSetUp([.. subjects.Select(one => one.Sheet)]), readings, line.GetValue(unit) ?? sheet.Unit));
            terminal.Out.WriteLine(Messages.Wrote(path));
            return CommandLine.Done;
        });
        return verb;
    }

    private static List<(Subject Subject, DataSheet Sheet)> Read(string archive, string[] ids)
    {
        using ArchiveFile file = ArchiveFile.OpenForReading(archive);
        Job[] jobs = [.. ids.Select(file.Jobs.Load)];
        int different = jobs.Select(job => job.Id).Distinct().Count();
        if (different < DrawnSheet.FewestJobs || different < jobs.Length)
        {
            throw new UserErrorException(Messages.SheetFromTooFew(different, DrawnSheet.FewestJobs));
        }

        return [.. jobs.Select(job => (ArchivedSubjects.OfJob(file, job), OwnSheet(job)))];
    }

    private static void RefuseOtherTrucks(List<(Subject Subject, DataSheet Sheet)> subjects)
    {
        (Subject first, DataSheet sheet) = subjects[0];
        foreach ((Subject subject, DataSheet other) in subjects)
        {
            JobDetails details = subject.Job!.Details;
            if (details.Truck.Length == 0)
            {
                throw new UserErrorException(Messages.SheetFromUnnamed(subject.Job.Id));
            }

            bool same = string.Equals(details.Truck, first.Job!.Details.Truck, StringComparison.OrdinalIgnoreCase)
                && string.Equals(details.Fuel, first.Job.Details.Fuel, StringComparison.OrdinalIgnoreCase)
                && other.HoldRpm.Equals(sheet.HoldRpm);
            if (!same)
            {
                throw new UserErrorException(Messages.SheetFromOther(subject.Job.Id, Kind(subject, other), first.Job.Id, Kind(first, sheet)));
            }
        }
    }

    // Without limits every truck is healthy.
    private static DataSheet OwnSheet(Job job) =>
        ArchivedSubjects.OwnSheet(job) ?? throw new UserErrorException(Messages.SheetFromWithoutSheet(job.Id));

    private static string Kind(Subject subject, DataSheet sheet) => Messages.TruckKind(subject.Job!.Details.Truck, subject.Job.Details.Fuel, sheet.HoldRpm);

    private static JobReadings Healthy((Subject Subject, DataSheet Sheet) one)
    {
        (Subject subject, DataSheet sheet) = one;
        Job job = subject.Job!;
        Judgement judgement = subject.Judged(sheet, PressureUnit.Kilopascal);
        if (judgement.Suspects.Count > 0)
        {
            throw new UserErrorException(Messages.SheetFromSuspect(job.Id, CauseWords.Of(judgement.Suspects[0].Code), judgement.Suspects[0].For is [string reason, ..] ? reason : ""));
        }

        if (!Outcome.IsJudged(judgement))
        {
            throw new UserErrorException(Messages.SheetFromWithoutSheet(job.Id));
        }

        if (Outcome.IsCold(judgement))
        {
            throw new UserErrorException(Messages.SheetFromCold(job.Id));
        }

        return new JobReadings(job.Id, job.Opened, job.Details.Serial, SheetReadings.Of(Judge.EvidenceOf(subject.Sessions, sheet, subject.Facts)));
    }
}
