using System;
using System.Text.Json;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

public class JobTests
{
    [Fact]
    public void A_job_keeps_what_was_written_and_takes_no_more_once_closed()
    {
        using var bench = new Workbench();
        LoggerBoxCommand.Run("job", "new", "--archive", bench.Archive, "--truck", "Yard 4", "--serial", "SN-1", "--hours", "4211.5", "--fuel", "LPG",
            "--complaint", "crawls up the ramp; \"worse\" when <hot>", "--technician", "A. Tester", "--sheet", Recordings.Sheet("healthy"),
            "--altitude", "420", "--air", "31", "--oil-level", "full", "--oil-look", "clean", "--oil", "82", "--oil-read", "thermometer in the dip tube").Expect(0);
        CommandResult shown = LoggerBoxCommand.Run("job", "show", "J1", "--archive", bench.Archive, "--json").Expect(0);
        using JsonDocument job = JsonDocument.Parse(shown.Out);
        Assert.Equal("crawls up the ramp; \"worse\" when <hot>", job.RootElement.GetProperty("complaint").GetString());
        Assert.Equal(4211.5, job.RootElement.GetProperty("hours").GetDouble());
        Assert.Equal("healthy.sheet.toml", job.RootElement.GetProperty("sheet").GetString());
        Assert.Equal(JsonValueKind.Null, job.RootElement.GetProperty("closed").ValueKind);

        LoggerBoxCommand.Run("job", "close", "J1", "--not-released", "--archive", bench.Archive).Expect(0);
        LoggerBoxCommand.Run("job", "add", "J1", "S1", "--archive", bench.Archive).Refused(1, "J1", "closed");
    }

    [Fact]
    public void What_the_archive_does_not_hold_is_refused_by_name()
    {
        using var bench = new Workbench();
        LoggerBoxCommand.Run("sessions", "--archive", bench.Archive).Refused(1, bench.Archive);
        Assert.Empty(bench.Files());
        LoggerBoxCommand.Run("job", "new", "--truck", "Yard 4", "--archive", bench.Archive).Expect(0);
        LoggerBoxCommand.Run("job", "show", "J7", "--archive", bench.Archive).Refused(1, "J7");
        LoggerBoxCommand.Run("job", "add", "J1", "S3", "--archive", bench.Archive).Refused(1, "S3");
        LoggerBoxCommand.Run("judge", "S3", "--archive", bench.Archive, "--sheet", Recordings.Sheet("healthy")).Refused(1, "S3");
        LoggerBoxCommand.Run("judge", "J1", "--archive", bench.Archive).Refused(1, "J1");
        LoggerBoxCommand.Run("export", "S3", "--archive", bench.Archive, "--out", bench.At("t.csv")).Refused(1, "S3");
        Assert.Equal(["archive.sqlite"], bench.Files());
    }

    [Fact]
    public void A_file_that_is_no_archive_is_left_as_it_was()
    {
        using var bench = new Workbench();
        string other = bench.Write("notes.txt", "these are notes, and no SQLite file, whatever its name says");
        LoggerBoxCommand.Run("sessions", "--archive", other).Refused(1, other, "SQLite");
        LoggerBoxCommand.Run("job", "new", "--truck", "Yard 4", "--archive", other).Refused(1, other, "SQLite");
        Assert.Equal("these are notes, and no SQLite file, whatever its name says", System.IO.File.ReadAllText(other));
        Assert.Equal(["notes.txt"], bench.Files());
    }
}
