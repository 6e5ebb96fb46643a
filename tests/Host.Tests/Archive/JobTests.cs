using System;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Tests.Archive.Places;
using LoggerBox.Host.Tests.Sessions;
using Xunit;

namespace LoggerBox.Host.Tests.Archive;

public abstract class JobTests : StoreTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.FromHours(-7));

    private readonly ArchiveFile archive;

    protected JobTests(ArchivePlace place)
        : base(place)
    {
        archive = place.Open();
        for (uint number = 1; number <= 3; number++)
        {
            archive.Sessions.Add(RecordedBytes.Session(number, seed: 1, sampleSets: 5).ToArray(), SessionOrigin.Fetched, "COM3", Now);
        }
    }

    protected override void Close() => archive.Dispose();

    [StoreFact]
    public void A_work_order_comes_back_as_it_was_written()
    {
        JobDetails details = new(
            Truck: "Sample truck", Serial: "0001'); DROP TABLE jobs; --", HourMeter: 8123.4, Fuel: "LPG", Complaint: "no power\nuphill, “weak”",
            Technician: "A. Fitter", SheetName: "sample.toml", SheetText: "[truck]\nname = \"Sample truck\"\n", AltitudeMetres: 120, AirCelsius: -5.5,
            OilLevel: "full", OilLook: "clear", OilCelsius: 82.5, OilRead: "infrared on the sump");

        string id = archive.Jobs.Create(details, Now);

        Job job = archive.Jobs.Load(id);
        Assert.Equal("J1", id);
        Assert.Equal(details, job.Details);
        Assert.Equal(Now, job.Opened);
        Assert.Equal(TimeSpan.FromHours(-7), job.Opened.Offset);
        Assert.Null(job.Closed);
        Assert.Empty(job.SessionIds);
    }

    [StoreFact]
    public void What_was_not_written_down_stays_unknown()
    {
        Job job = archive.Jobs.Load(archive.Jobs.Create(new JobDetails(Truck: "Sample truck"), Now));

        Assert.Null(job.Details.HourMeter);
        Assert.Null(job.Details.OilCelsius);
        Assert.Equal("", job.Details.OilLook);
    }

    [StoreFact]
    public void A_text_that_is_too_long_is_refused_and_the_longest_is_kept()
    {
        string name = new('x', 200);
        string story = new('x', 2000);
        string id = archive.Jobs.Create(new JobDetails(Truck: name, Serial: name, Complaint: story), Now);
        archive.Jobs.Close(id, Now, story, story);
        Assert.Equal((name, story, story), (archive.Jobs.Load(id).Details.Serial, archive.Jobs.Load(id).Details.Complaint, archive.Jobs.Load(id).Correction));

        foreach (JobDetails details in (JobDetails[])[new(Truck: name + "x"), new(Serial: name + "x"), new(Technician: name + "x"), new(OilLook: name + "x"), new(Complaint: story + "x")])
        {
            Assert.Contains("write it shorter", Assert.Throws<UserErrorException>(() => archive.Jobs.Create(details, Now)).Message);
        }

        Assert.Throws<UserErrorException>(() => archive.Jobs.Close(id, Now, story + "x"));
        Assert.Throws<UserErrorException>(() => archive.Jobs.Close(id, Now, "", story + "x"));
        Assert.Equal(id, Assert.Single(archive.Jobs.All()).Id);
        Assert.Equal(story, archive.Jobs.Load(id).Cause);
    }

    [StoreFact]
    public void A_job_joins_sessions_in_the_order_they_were_added_each_once()
    {
        string id = archive.Jobs.Create(new JobDetails(), Now);
        archive.Jobs.AddSessions(id, ["S3"], Now);
        archive.Jobs.AddSessions("j1", ["s1", "S3"], Now);

        Assert.Equal(["S3", "S1"], archive.Jobs.Load(id).SessionIds);
        Assert.Equal(id, Assert.Single(archive.Jobs.All()).Id);
    }

    [StoreFact]
    public void One_unknown_session_and_none_is_added()
    {
        string id = archive.Jobs.Create(new JobDetails(), Now);

        Assert.Throws<UserErrorException>(() => archive.Jobs.AddSessions(id, ["S1", "S99"], Now));

        Assert.Empty(archive.Jobs.Load(id).SessionIds);
    }

    [StoreFact]
    public void A_closed_job_keeps_its_date_and_takes_no_more_sessions()
    {
        string id = archive.Jobs.Create(new JobDetails(), Now);
        archive.Jobs.Close(id, Now.AddHours(3));
        archive.Jobs.Close(id, Now.AddHours(9));

        Assert.Equal(Now.AddHours(3), archive.Jobs.Load(id).Closed);
        UserErrorException refusal = Assert.Throws<UserErrorException>(() => archive.Jobs.AddSessions(id, ["S1"], Now));
        Assert.Contains("J1 is closed", refusal.Message, StringComparison.Ordinal);
    }

    [StoreFact]
    public void A_job_that_is_not_there_is_refused_by_name()
    {
        Assert.Contains("no job J5", Assert.Throws<UserErrorException>(() => archive.Jobs.Load("J5")).Message, StringComparison.Ordinal);
        Assert.Contains("no job S1", Assert.Throws<UserErrorException>(() => archive.Jobs.Close("S1", Now)).Message, StringComparison.Ordinal);
    }
}

public sealed class JobTestsInSqlite() : JobTests(new SqlitePlace());

[InPostgres]
public sealed class JobTestsInPostgres() : JobTests(new PostgresPlace());
