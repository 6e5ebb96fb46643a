using System;
using System.Collections.Generic;
using System.IO;
using LoggerBox.Host.Traces;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Traces;

public class ColumnMapTests
{
    private const string Foreign = "Time,Engine speed,P1,P2 [bar],Shift,Main temp\n0.0,700,60.5,4.1,N,80\n0.1,702,,4.2,F,80\n";

    private static readonly string[] Said = ["time_s=Time", "rpm=Engine speed", "main_psi=P1", "clutch_bar=P2 [bar]", "gear=Shift"];

    [Fact]
    public void A_foreign_recording_reads_as_if_its_columns_had_their_names()
    {
        Trace mapped = Read(Foreign, Said);
        Trace named = TraceText.Read(Foreign.Replace("Time,Engine speed,P1,P2 [bar],Shift,Main temp", "time_s,rpm,main_psi,clutch_bar,gear,other", StringComparison.Ordinal));
        Assert.Equal(named.Microseconds, mapped.Microseconds);
        Assert.Equal(named.SpeedTenths, mapped.SpeedTenths);
        Assert.Equal(named.Gears, mapped.Gears);
        Assert.Equal([Gear.Neutral, Gear.Forward], mapped.Gears!);
        for (int row = 0; row < 2; row++)
        {
            Assert.Equal(named.Main!.TryGet(row, out double main), mapped.Main!.TryGet(row, out double mappedMain));
            Assert.Equal(main, mappedMain);
            Assert.True(named.Clutch!.TryGet(row, out double clutch) && mapped.Clutch!.TryGet(row, out double mappedClutch) && clutch == mappedClutch);
        }

        Assert.Contains(mapped.Notes, note => note.Contains("Main temp", StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_said_of_a_column_goes_before_its_name()
    {
        Trace trace = Read("time_s,rpm,Engine speed\n0,1,700\n1,1,701\n", ["rpm=Engine speed"]);
        Assert.Equal([7000, 7010], trace.SpeedTenths!);
    }

    /// <summary>ISO 8601 times; 14:00 UTC on 31 March 2026 is 1774965600 s after 1970 (date -u -d 2026-03-31T14:00:00Z +%s).</summary>
    [Theory]
    [InlineData("time_ms", "100", "150.5", 100_000, 150_500)]
    [InlineData("time_clock", "14:00:00.1", "14:00:00.35", 50_400_100_000, 50_400_350_000)]
    [InlineData("time_clock", "2026-03-31T14:00:00.1Z", "2026-03-31T14:00:00.2Z", 1_774_965_600_100_000, 1_774_965_600_200_000)]
    [InlineData("time_clock", "2026-03-31 16:00:00+02:00", "2026-03-31 16:00:01+02:00", 1_774_965_600_000_000, 1_774_965_601_000_000)]
    public void Times_may_be_milliseconds_or_a_clocks(string reading, string first, string second, long firstMicroseconds, long secondMicroseconds) =>
        Assert.Equal([firstMicroseconds, secondMicroseconds], Read($"T,rpm\n{first},700\n{second},700\n", [reading + "=T"]).Microseconds);

    [Theory]
    [InlineData("T,rpm\n25:00:00,1\n", "line 2", "no time of a clock")]
    [InlineData("T,rpm\n14:00:01,1\n14:00:00,1\n", "line 3", "goes back")]
    [InlineData("T,rpm\n9999-12-31T00:00:00,1\n", "line 2", "no time of a clock")]
    [InlineData("T,rpm\n14:00:00,fast\n", "line 2", "no number")]
    [InlineData("T,rpm,T\n14:00:00,1,1\n", "line 1", "there twice")]
    [InlineData("Zeit,rpm\n14:00:00,1\n", "line 1", "no column \"T\"")]
    [InlineData("T,rpm,clutch\n14:00:00,1,1\n", "line 1", "no known unit")]
    public void A_foreign_recording_is_refused_as_any_other(string text, string line, string saying)
    {
        var error = Assert.Throws<UserErrorException>(() => Read(text, ["time_clock=T"]));
        Assert.Contains("t.csv, " + line, error.Message, StringComparison.Ordinal);
        Assert.Contains(saying, error.Message, StringComparison.Ordinal);
        Assert.False(error.Usage);
    }

    [Theory]
    [InlineData("speed=Engine speed", "known are time_s, time_ms, time_clock, rpm, gear, step, oil_C, main_U, clutch_U, converter_U")]
    [InlineData("main_furlong=P1", "no reading")]
    [InlineData("rpm", "write the reading, =")]
    [InlineData("=P1", "write the reading, =")]
    [InlineData("rpm=", "write the reading, =")]
    [InlineData("rpm=Other", "said already")]
    [InlineData("main_bar=Other", "main_psi is the same reading")]
    [InlineData("oil_C=P1", "a column is one reading")]
    public void A_saying_that_cannot_be_is_a_wrong_command_line(string word, string saying)
    {
        var error = Assert.Throws<UserErrorException>(() => ColumnMap.Of(null, ["rpm=Speed", "main_psi=P1", word]));
        Assert.Contains(saying, error.Message, StringComparison.Ordinal);
        Assert.True(error.Usage);
    }

    [Fact]
    public void A_file_says_the_same_and_the_command_line_goes_before_it()
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("map.toml");
        File.WriteAllText(path, "# our old instrument\ntime_s = \"Time\"\nrpm = \"Drum speed\"\nmain_psi = \"P1\"\n");
        Trace trace = TraceText.Read(Foreign, source => source with { Columns = ColumnMap.Of(path, ["rpm=Engine speed"]) });
        Assert.Equal([7000, 7020], trace.SpeedTenths!);
        Assert.True(trace.Main!.TryGet(0, out _));
    }

    [Theory]
    [InlineData("rpm = \"Speed\"\nspeed = \"x\"\n", "map.toml, line 2", "known are")]
    [InlineData("rpm = 5\n", "map.toml, line 1", "in quotes")]
    [InlineData("rpm = \"Speed\n", "map.toml, line 1", "TOML")]
    [InlineData("rpm = \"Speed\"\nrpm = \"x\"\n", "map.toml, line 2", "twice")]
    [InlineData("main_psi = \"P1\"\nclutch_psi = \"P1\"\n", "map.toml, line 2", "a column is one reading")]
    public void A_files_mistake_is_told_with_its_line(string text, string line, string saying)
    {
        using var folder = new TemporaryFolder();
        string path = folder.File("map.toml");
        File.WriteAllText(path, text);
        var error = Assert.Throws<UserErrorException>(() => ColumnMap.Of(path, []));
        Assert.StartsWith(line, error.Message, StringComparison.Ordinal);
        Assert.Contains(saying, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_said_is_no_map() => Assert.Null(ColumnMap.Of(null, []));

    private static Trace Read(string text, IReadOnlyList<string> words) => TraceText.Read(text, source => source with { Columns = ColumnMap.Of(null, words) });
}
