using System;
using System.CommandLine;
using System.IO;
using System.Linq;
using System.Threading;
using LoggerBox.App.Simulation;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Judging;
using LoggerBox.Host.Link;
using LoggerBox.Host.Report;
using LoggerBox.Host.Report.Html;
using LoggerBox.Host.Subjects;
using LoggerBox.Host.Units;
using LoggerBox.TruckSimulator.Demo;
using LoggerBox.TruckSimulator.Faults;

namespace LoggerBox.App.Console;

/// <summary>The whole job on an invented truck, over a real serial line, on virtual time.</summary>
internal static class DemoVerb
{
    // The invented technician goes to the truck as the gates want it and reads zero again at the end. Oil he looks at, without a thermometer; and
    // he repairs nothing, so the truck goes back to no work. All of it on the day of his invented test.
    private static readonly string[] TickedBefore = ["chocks", "parking-brake", "area-clear", "ventilation", "dry-at-idle", "stands", "truck-down"];
    private static readonly string[] TickedAfter = ["zero-again"];

    public static Command Declare(Terminal terminal, CancellationToken stop)
    {
        var cause = new Option<string>("--cause") { Description = Messages.CauseOption, HelpName = "CODE", DefaultValueFactory = _ => SimulatedCauses.Healthy };
        var seed = new Option<int>("--seed") { Description = Messages.SeedOption, HelpName = "N", DefaultValueFactory = _ => 1 };
        var folder = SharedOptions.NotEmpty(new Option<string>("--out") { Description = Messages.DemoOutOption, HelpName = "DIR", DefaultValueFactory = _ => "loggerbox-demo" });
        var unit = SharedOptions.Unit();
        var json = SharedOptions.Json();
        var verb = new Command("demo", Messages.DemoVerb) { cause, seed, folder, unit, json };
        verb.SetAction(line =>
        {
            SimulatedCause put = Causes.Find(line.GetRequiredValue(cause));
            var account = new DemoAccount(line.GetValue(json) ? terminal.Error : terminal.Out, put.Code, line.GetValue(seed));
            string place = MakeFolder(line.GetRequiredValue(folder));
            using ArchiveFile archive = ArchiveFile.Open(Path.Combine(place, "archive.sqlite"));
            using var run = DemoRun.Record(put, line.GetValue(seed), stop);
            TakenSession session = Download(run, archive, account);
            Job job = WriteJob(archive, session.Id, run.AltitudeMetres);
            Finish(terminal, account, place, ArchivedSubjects.OfJob(archive, job), line.GetValue(unit), line.GetValue(json));
            return CommandLine.Done;
        });
        return verb;
    }

    private static TakenSession Download(DemoRun run, ArchiveFile archive, DemoAccount account)
    {
        account.Recorded(run.VirtualSeconds);
        using HostLine line = HostLine.Open(run.PortName);
        DownloadResult result = new SessionDownload(new LoggerConnection(line), archive, SessionOrigin.Simulated, DateTimeOffset.Now).Run();
        TakenSession session = result.Sessions[^1];
        account.Downloaded(run.PortName, archive.Sessions.Find(session.Id));
        return session;
    }

    private static Job WriteJob(ArchiveFile archive, string session, double? altitudeMetres)
    {
        var details = new JobDetails(
            VirtualLogger.Sheet.Truck,
            "SAMPLE-0001",
            4211,
            VirtualLogger.Sheet.Engine.Fuel ?? "",
            Messages.DemoComplaint,
            Messages.DemoTechnician,
            SampleSheet.FileName,
            SampleSheet.Text(),
            AltitudeMetres: altitudeMetres is { } metres ? 10 * Math.Round(metres / 10) : null,
            OilLevel: "at the mark",
            OilLook: "clean");
        ArchivedSession row = archive.Sessions.Find(session);
        DateTimeOffset start = row.Start ?? DateTimeOffset.Now;
        string id = archive.Jobs.Create(details, DateTimeOffset.Now);
        archive.Jobs.AddSessions(id, [session], DateTimeOffset.Now);
        archive.Gates.Tick(id, TickedBefore, Messages.DemoTechnician, JobMessages.DemoNote, start.AddMinutes(-5));
        archive.Gates.Tick(id, TickedAfter, Messages.DemoTechnician, JobMessages.DemoNote, start + row.Duration);
        return archive.Jobs.Load(id);
    }

    private static void Finish(Terminal terminal, DemoAccount account, string place, Subject subject, PressureUnit? unit, bool json)
    {
        Judgement judgement = subject.Judged(VirtualLogger.Sheet, unit ?? VirtualLogger.Sheet.Unit);
        WholeFile.Write(Path.Combine(place, SampleSheet.FileName), SampleSheet.Text());
        ReportDocument report = subject.Report(judgement, VirtualLogger.Sheet, DateTimeOffset.Now);
        WholeFile.Write(Path.Combine(place, "report.html"), HtmlReport.Render(report));
        account.Captured(judgement);
        if (json)
        {
            JudgementJson.Write(judgement, terminal.Out);
        }
        else
        {
            new TextReport(terminal.Out, terminal.Colour).Write(report);
        }

        account.NotReleased(subject.Job!.Id);
        account.Ended(judgement, [.. ((string[])["archive.sqlite", SampleSheet.FileName, "report.html"]).Select(name => Path.Combine(place, name))]);
    }

    private static string MakeFolder(string path)
    {
        try
        {
            Directory.CreateDirectory(path);
            return path;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UserErrorException(Messages.FolderTrouble(path, error.Message));
        }
    }
}
