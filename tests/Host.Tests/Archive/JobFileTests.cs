using System;
using System.IO;
using System.Linq;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Archive.JobFiles;
using LoggerBox.Host.Releasing;
using LoggerBox.Host.Tests.Archive.Places;
using LoggerBox.Host.Tests.Sessions;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

public abstract class JobFileTests : StoreTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.FromHours(-7));

    private readonly TemporaryFolder folder = new();
    private readonly ArchiveFile first;
    private readonly JobDetails details = new(
        Truck: "Sample truck", Serial: "0001", HourMeter: 8123.4, Fuel: "LPG", Complaint: "no power\n<b>uphill</b>, \"weak\"; ../..", Technician: "A. Fitter",
        SheetName: "sample.toml", SheetText: "[truck]\nname = \"Sample truck\"\n", AltitudeMetres: 120, AirCelsius: -5.5, OilLevel: "full", OilLook: "clear",
        OilCelsius: 82.5, OilRead: "infrared on the sump");

    protected JobFileTests(ArchivePlace place)
        : base(place)
    {
        first = place.Open("first");
        for (uint number = 1; number <= 3; number++)
        {
            first.Sessions.Add(RecordedBytes.Session(number, seed: 1, sampleSets: 500).ToArray(), SessionOrigin.Fetched, "COM3", Now);
        }

        first.Jobs.Create(new JobDetails(), Now);
        first.Jobs.Create(details, Now);
        first.Jobs.AddSessions("J2", ["S3"], Now, SessionRole.Before);
        first.Jobs.AddSessions("J2", ["S1"], Now, SessionRole.After);
        first.Corrections.DateSession("S3", Now.AddDays(-2), "A. Fitter", "clock was empty", Now);
        first.Corrections.Add(new Correction("J2", "serial", "0002", "misread", "A. Fitter", Now));
        first.Gates.Tick("J2", ["chocks", "stands"], "A. Fitter", "on stands; <b>bold</b> \u202Eback\tside", Now);
        first.Gates.Tick("J2", [.. Gate.All.Where(gate => gate.Stage == GateStage.Closing).Select(gate => gate.Code)], "A. Fitter", "", Now);
        first.Jobs.Release("J2", "C. Chief", Now.AddHours(4), "charge pump worn", "pump replaced");
    }

    private string File => folder.File("job.lbjob");

    protected override void Close()
    {
        first.Dispose();
        folder.Dispose();
    }

    [StoreFact]
    public void A_job_comes_into_another_archive_with_all_that_belongs_to_it()
    {
        ImportedJob imported = Import(Export("J2"));

        Assert.Equal(("J2", true), (imported.Id, imported.Changed));
        Assert.Equal(["S1", "S2"], imported.Sessions);
        using ArchiveFile second = Second();
        Job there = first.Jobs.Load("J2");
        Job here = second.Jobs.Load("J2");
        Assert.Equal(Alone(there), Alone(here));
        Assert.Equal(("0002", "0001"), (here.Details.Serial, here.AsWritten!.Details.Serial));
        Assert.Equal(Alone(there.AsWritten!), Alone(here.AsWritten));
        Assert.Equal(there.Gates, here.Gates);
        Assert.Equal("C. Chief", here.Release.Release!.By);
        Assert.Equal([new JobSession("S1", SessionRole.Before), new JobSession("S2", SessionRole.After)], here.Sessions);
        Assert.Equal(first.Sessions.Load("S3").Bytes, second.Sessions.Load("S1").Bytes);
        Assert.Equal(first.Sessions.Load("S1").Bytes, second.Sessions.Load("S2").Bytes);
        Assert.Equal(first.Sessions.Find("S3") with { Id = "S1" }, second.Sessions.Find("S1"));
        Assert.Equal(Now.AddDays(-2), second.Sessions.Find("S1").Start);
        Assert.Equal(first.Corrections.Of("J2"), second.Corrections.Of("J2"));
    }

    [StoreTheory]
    [InlineData("a:b.toml", "a_b.toml")]
    [InlineData("a\\b/c.toml", "a_b_c.toml")]
    public void A_sheet_may_be_called_what_only_one_system_takes_for_a_name(string name, string there)
    {
        first.Jobs.Create(details with { SheetName = name }, Now);
        Import(Export("J3"));
        using ArchiveFile second = Second();
        Assert.Equal(there, second.Jobs.Load("J3").Details.SheetName);
    }

    [StoreFact]
    public void What_no_reader_takes_is_not_exported()
    {
        first.Jobs.Create(details with { SheetText = new string('x', (1 << 20) + 1) }, Now);
        first.Change(open => Enumerable.Range(0, 10_001).Sum(i => CorrectionRows.Insert(open, new Correction("J2", "serial", "0002", "misread", "A. Fitter", Now.AddSeconds(i)))));

        Assert.Contains("Job J3 cannot be written as a job file (the data sheet is no text)", NotExported("J3"), StringComparison.Ordinal);
        Assert.Contains("its sections do not end", NotExported("J2"), StringComparison.Ordinal);
    }

    /// <summary>Whether the database takes it and no job file does, or it is refused at once: it is told.</summary>
    [StoreFact]
    public void A_sheet_with_a_NUL_is_refused_with_a_sentence()
    {
        string refusal = Assert.Throws<UserErrorException>(() =>
        {
            first.Jobs.Create(details with { SheetText = "[truck]\0" }, Now);
            Export("J3");
        }).Message;
        Assert.Matches("the data sheet is no text|cannot keep that text", refusal);
    }

    /// <summary>Without its lists, which are equal only where they are the same.</summary>
    private static Job Alone(Job job) => job with { Sessions = [], Gates = [], Corrections = [], AsWritten = null };

    private string NotExported(string job) => Assert.Throws<UserErrorException>(() => Export(job)).Message;

    [StoreFact]
    public void A_second_import_changes_nothing()
    {
        byte[] file = Export("J2");
        Import(file);

        ImportedJob again = Import(file);

        Assert.False(again.Changed);
        using ArchiveFile second = Second();
        Assert.Equal(2, second.Sessions.All().Count);
        Assert.Single(second.Jobs.All());
        Assert.Single(second.Corrections.Of("S1"));
    }

    [StoreFact]
    public void Gates_that_came_since_are_added_after_those_that_are_there()
    {
        first.Jobs.Create(details, Now);
        first.Gates.Tick("J3", ["chocks"], "A. Fitter", "", Now);
        Import(Export("J3"));
        first.Gates.Withdraw("J3", ["chocks"], "A. Fitter", "", Now);
        first.Gates.Tick("J3", ["chocks"], "A. Fitter", "", Now);
        using (ArchiveFile second = Second())
        {
            second.Gates.Tick("J3", ["ventilation"], "B. Other", "", Now);
        }

        Assert.True(Import(Export("J3")).Changed);
        Assert.False(Import(Export("J3")).Changed);

        using ArchiveFile after = Second();
        Assert.Equal(["chocks", "ventilation", "-chocks", "chocks"], after.Jobs.Load("J3").Gates.Select(tick => (tick.Withdrawn ? "-" : "") + tick.Gate));
    }

    [StoreFact]
    public void The_calibrations_of_its_loggers_travel_with_a_job_once()
    {
        ArchivedCalibration main = new(
            RecordedBytes.LoggerId, 1, 3196, 12800, 3_447_379, 8600, "TX-5 <b>", "DW-1", "C-77", new DateOnly(2026, 1, 10), new DateOnly(2027, 1, 10), new DateOnly(2027, 1, 11), "A. Fitter", "319600 0", Now);
        first.Calibrations.Add([main, main with { LoggerId = 99 }]);
        Import(Export("J2"));
        Assert.False(Import(Export("J2")).Changed);
        using ArchiveFile second = Second();
        Assert.Equal(main, Assert.Single(second.Calibrations.Of(RecordedBytes.LoggerId)));
        Assert.Empty(second.Calibrations.Of(99));
    }

    /// <summary>A file of a program before there were gates has no section 128, as JOBFILE.md has it.</summary>
    [StoreFact]
    public void A_file_without_gates_is_taken_and_releases_nothing()
    {
        JobFileText older = new(Export("J2"));
        Assert.Equal(8, older.Sections.RemoveAll(section => section.Code == 128));
        Import(older.ToBytes());
        using ArchiveFile second = Second();
        Job job = second.Jobs.Load("J2");
        Assert.Equal((Now.AddHours(4), "charge pump worn"), (job.Closed, job.Cause));
        Assert.False(job.Release.IsReleased);
    }

    [StoreFact]
    public void A_file_that_only_claims_a_release_releases_no_truck_and_a_gate_of_a_later_program_is_kept()
    {
        JobFileText claim = new(Export("J2"));
        claim.Sections.RemoveAt(claim.IndexOf(128));
        claim.Replace(128, "stands", "tyres");
        claim.Sections.RemoveAt(claim.Sections.FindLastIndex(section => section.Code == 128) - 1);
        Import(claim.ToBytes());
        using ArchiveFile second = Second();
        Job job = second.Jobs.Load("J2");
        Assert.Equal(["tyres", "zero-again", "plugs-dry", "oil-after", "chocks-away", "release"], job.Gates.Select(tick => tick.Gate));
        Assert.False(job.Release.IsReleased);
    }

    [StoreFact]
    public void A_number_that_another_job_has_is_changed_for_the_next()
    {
        using (ArchiveFile second = Second())
        {
            second.Jobs.Create(new JobDetails(Truck: "Other"), Now);
            second.Jobs.Create(new JobDetails(Truck: "Another"), Now);
        }

        byte[] file = Export("J2");
        Assert.Equal(("J3", "J2"), (Import(file).Id, Import(file).IdInFile));
        using ArchiveFile after = Second();
        Assert.Equal("Another", after.Jobs.Load("J2").Details.Truck);
        Assert.Equal(details with { Serial = "0002" }, after.Jobs.Load("J3").Details);
    }

    [StoreFact]
    public void What_came_to_the_job_since_is_added_and_what_stands_is_left()
    {
        first.Jobs.Create(details, Now);
        first.Jobs.AddSessions("J3", ["S1"], Now);
        Import(Export("J3"));
        first.Jobs.AddSessions("J3", ["S2"], Now, SessionRole.After);
        first.Jobs.Close("J3", Now.AddHours(1), "found here");
        using (ArchiveFile second = Second())
        {
            second.Jobs.Close("J3", Now.AddHours(2), "found there");
        }

        Assert.True(Import(Export("J3")).Changed);

        using ArchiveFile after = Second();
        Job job = after.Jobs.Load("J3");
        Assert.Equal(["S1", "S2"], job.SessionIds);
        Assert.Equal(("found there", Now.AddHours(2)), (job.Cause, job.Closed));
    }

    [StoreFact]
    public void A_session_that_is_there_with_other_bytes_refuses_the_whole_file()
    {
        byte[] other = RecordedBytes.Session(1, seed: 2, sampleSets: 500).ToArray();
        using (ArchiveFile second = Second())
        {
            second.Sessions.Add(other, SessionOrigin.Fetched, "COM4", Now);
        }

        string refusal = Assert.Throws<UserErrorException>(() => Import(Export("J2"))).Message;

        Assert.Equal("Session 1 of the job file job.lbjob is in the archive as S1 with other bytes: nothing was imported; compare the two archives and keep both files.", refusal);
        using ArchiveFile after = Second();
        Assert.Equal(other, after.Sessions.Load(Assert.Single(after.Sessions.All()).Id).Bytes);
        Assert.Empty(after.Jobs.All());
    }

    [StoreFact]
    public void A_session_that_came_in_part_cannot_be_exported_and_no_file_is_left()
    {
        first.Incoming.Begin(new SessionIdentity(1, 1, 9), 100, SessionOrigin.Fetched, "COM3", Now);
        first.Jobs.AddSessions("J1", ["S4"], Now);
        Assert.Contains("arrived only in part", Assert.Throws<UserErrorException>(() => Export("J1")).Message, StringComparison.Ordinal);
    }

    private byte[] Export(string job)
    {
        using MemoryStream file = new();
        JobFileWriter.Write(first, job, file);
        return file.ToArray();
    }

    private ArchiveFile Second() => Place.Open("second");

    private ImportedJob Import(byte[] file)
    {
        System.IO.File.WriteAllBytes(File, file);
        return JobImport.Run(File, Second);
    }
}

public sealed class JobFileTestsInSqlite() : JobFileTests(new SqlitePlace());

[InPostgres]
public sealed class JobFileTestsInPostgres() : JobFileTests(new PostgresPlace());
