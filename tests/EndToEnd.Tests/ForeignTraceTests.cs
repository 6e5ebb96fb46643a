using System;
using System.IO;
using System.Linq;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>Recordings of other instruments, with columns of other names and as Parquet files.</summary>
public class ForeignTraceTests
{
    private static readonly string[] Map = ["--map", "rpm=Engine speed", "--map", "main_kgfcm2=P1", "--map", "time_ms=Zeit"];

    [Fact]
    public void A_foreign_recording_is_judged_as_our_own()
    {
        using var bench = new Workbench();
        string foreign = bench.Write("foreign.csv", Foreign("forward-clutch-leak"));
        string sheet = Recordings.Sheet("forward-clutch-leak");
        CommandResult own = LoggerBoxCommand.Run("judge", Recordings.Trace("forward-clutch-leak"), "--sheet", sheet, "--json").Expect(0);
        CommandResult mapped = LoggerBoxCommand.Run(["judge", foreign, "--sheet", sheet, "--json", .. Map]).Expect(0);
        Assert.Equal(own.Out, mapped.Out);

        string file = bench.Write("map.toml", "rpm = \"Engine speed\"\nmain_kgfcm2 = \"P1\"\ntime_ms = \"Zeit\"\n");
        LoggerBoxCommand.Run("import", foreign, "--map-file", file, "--archive", bench.Archive).Expect(0);
        LoggerBoxCommand.Run("import", foreign, "--archive", bench.At("other.sqlite")).Refused(1, "foreign.csv", "line 1", "time_s");
        LoggerBoxCommand.Run("import", foreign, "--map", "speed=Engine speed", "--archive", bench.At("other.sqlite")).Refused(2, "known are");
        Assert.DoesNotContain("other.sqlite", bench.Files());
    }

    [Fact]
    public void A_session_goes_out_as_Parquet_and_comes_back_as_the_same_records()
    {
        using var bench = new Workbench();
        LoggerBoxCommand.Run("import", Recordings.Trace("healthy"), "--archive", bench.Archive).Expect(0);
        string csv = bench.At("t.csv");
        string parquet = bench.At("t.parquet");
        LoggerBoxCommand.Run("export", "S1", "--out", csv, "--archive", bench.Archive).Expect(0);
        LoggerBoxCommand.Run("export", "S1", "--out", parquet, "--archive", bench.Archive).Expect(0);
        string sheet = Recordings.Sheet("healthy");
        Assert.Equal(
            LoggerBoxCommand.Run("judge", csv, "--sheet", sheet, "--json").Expect(0).Out,
            LoggerBoxCommand.Run("judge", parquet, "--sheet", sheet, "--json").Expect(0).Out);
        Assert.True(new FileInfo(parquet).Length < new FileInfo(csv).Length);
        LoggerBoxCommand.Run("import", parquet, "--archive", bench.At("second.sqlite")).Expect(0);
        LoggerBoxCommand.Run("export", "S1", "--out", bench.At("t.xlsx"), "--archive", bench.Archive).Refused(2, ".parquet");
    }

    /// <summary>Other names for three columns, and the time in milliseconds.</summary>
    private static string Foreign(string name)
    {
        string[] lines = [.. Recordings.Lines(name).Where(line => !line.StartsWith('#'))];
        int time = Array.IndexOf(lines[0].Split(','), "time_s");
        Assert.Equal(0, time);
        string head = lines[0].Replace("time_s,", "Zeit,", StringComparison.Ordinal).Replace(",rpm,", ",Engine speed,", StringComparison.Ordinal).Replace(",main_kgfcm2,", ",P1,", StringComparison.Ordinal);
        return head + "\n" + string.Concat(lines.Skip(1).Select(line =>
        {
            string[] cells = line.Split(',', 2);
            decimal milliseconds = decimal.Parse(cells[0], System.Globalization.CultureInfo.InvariantCulture) * 1000;
            return FormattableString.Invariant($"{milliseconds},{cells[1]}\n");
        }));
    }
}
