using System;
using System.IO;
using System.Linq;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>A shop reads its gauges in one unit, and the data sheet of the job says which: the demo's is in psi.</summary>
public sealed class UsualUnitTests : IDisposable
{
    private readonly Workbench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_trace_and_a_history_are_in_the_unit_of_the_jobs_sheet_where_none_is_asked_for()
    {
        LoggerBoxCommand.Run("demo", "--out", bench.At("demo"), "--seed", "1").Expect(0);
        LoggerBoxCommand.Run("demo", "--out", bench.At("demo"), "--seed", "2").Expect(0);
        string archive = bench.At("demo/archive.sqlite");
        Assert.Contains("main_psi", Columns(archive), StringComparison.Ordinal);
        Assert.Contains("main_kPa", Columns(archive, "--unit", "kPa"), StringComparison.Ordinal);

        string history = LoggerBoxCommand.Run("history", "SAMPLE-0001", "--archive", archive).Expect(0).Out;
        Assert.Matches(@"Hold speed, forward: clutch pressure +psi ", history);
        Assert.Matches(@"Full pedal, work relief: speed drop +rpm ", history);
        Assert.Matches(@"Engaging forward: engagement time +s ", history);
    }

    private string Columns(string archive, params string[] more)
    {
        LoggerBoxCommand.Run(["export", "S1", "--archive", archive, "--out", bench.At("trace.csv"), .. more]).Expect(0);
        return File.ReadLines(bench.At("trace.csv")).First(line => line.StartsWith("time_s", StringComparison.Ordinal));
    }
}
