using System.Linq;
using System.Text.Json;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

public class CompareTests
{
    [Fact]
    public void Two_jobs_of_one_truck_are_compared_reading_by_reading()
    {
        using var bench = new Workbench();
        string[] causes = ["forward-clutch-leak", "healthy"];
        foreach (string cause in causes)
        {
            LoggerBoxCommand.Run("demo", "--cause", cause, "--seed", "3", "--out", bench.At(cause)).Expect(0);
        }

        string before = bench.At("before.csv");
        string after = bench.At("after.csv");
        LoggerBoxCommand.Run("export", "S1", "--archive", bench.At("forward-clutch-leak/archive.sqlite"), "--out", before).Expect(0);
        LoggerBoxCommand.Run("export", "S1", "--archive", bench.At("healthy/archive.sqlite"), "--out", after).Expect(0);
        string sheet = bench.At("healthy/sample-truck.toml");
        CommandResult result = LoggerBoxCommand.Run("compare", before, after, "--sheet", sheet, "--json").Expect(0);
        JsonElement comparison = JsonDocument.Parse(result.Out).RootElement;
        Assert.Contains("forward-clutch-leak", comparison.GetProperty("suspects_gone").EnumerateArray().Select(code => code.GetString()));
        Assert.Empty(comparison.GetProperty("suspects_new").EnumerateArray());
        JsonElement clutch = comparison.GetProperty("readings").EnumerateArray()
            .Single(row => row.GetProperty("step").GetString() == "idle-F" && row.GetProperty("quantity").GetString() == "clutch");
        Assert.True(clutch.GetProperty("change").GetDouble() > clutch.GetProperty("uncertainty").GetDouble());
        Assert.True(clutch.GetProperty("changed").GetBoolean());
        string text = LoggerBoxCommand.Run("compare", before, after, "--sheet", sheet).Expect(0).Out;
        Assert.Contains("gone  forward clutch circuit leaks", text, System.StringComparison.Ordinal);
    }

    [Fact]
    public void Jobs_of_two_trucks_are_refused()
    {
        using var bench = new Workbench();
        foreach (string serial in (string[])["SN-1", "SN-2"])
        {
            LoggerBoxCommand.Run("job", "new", "--archive", bench.Archive, "--serial", serial, "--sheet", Recordings.Sheet("healthy")).Expect(0);
            string id = serial == "SN-1" ? "1" : "2";
            LoggerBoxCommand.Run("import", Recordings.Trace("healthy"), "--archive", bench.Archive).Expect(0);
            LoggerBoxCommand.Run("job", "add", "J" + id, "S1", "--archive", bench.Archive).Expect(0);
        }

        LoggerBoxCommand.Run("compare", "J1", "J2", "--archive", bench.Archive).Refused(1, "J1", "SN-1", "J2", "SN-2");
    }

    /// <summary>One file of pickup edges cannot be the speed of two visits.</summary>
    [Fact]
    public void Pickup_edges_of_one_file_are_not_taken_for_both_sides() =>
        LoggerBoxCommand.Run("compare", Recordings.Trace("healthy"), Recordings.Trace("healthy"), "--sheet", Recordings.Sheet("healthy"), "--pulses", "edges.txt")
            .Refused(2, "--pulses");
}
