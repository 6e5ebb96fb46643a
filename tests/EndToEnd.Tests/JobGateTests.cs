using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>Gates of a work order from its first tick to the release of the truck, and what every report says until then.</summary>
public sealed class JobGateTests : IDisposable
{
    private const string NotReleased = "NOT RELEASED";

    private readonly Workbench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_job_is_closed_only_with_its_closing_gates_or_plainly_without_a_release()
    {
        Run("job", "new", "--truck", "Yard 4").Expect(0);
        Run("job", "close", "J1", "--released-by", "C. Chief").Refused(1, "J1", "5 closing gates are open", "road-test", "loggerbox job gate J1 zero-again", "--not-released");
        Run("job", "close", "J1").Refused(1, "J1", "5 closing gates are open");
        Run("job", "close", "J1", "--released-by", "C. Chief", "--not-released").Refused(2, "--released-by", "--not-released");
        Run("job", "gate", "J1", "zero-again", "plugs-dry", "oil-after", "chocks-away", "road-test", "--by", "A. Fitter").Expect(0);
        Run("job", "close", "J1").Refused(1, "J1", "nobody who releases");
        Assert.Equal("Job J1 is closed; the truck is released by C. Chief.\n", Run("job", "close", "J1", "--cause", "pump worn", "--correction", "replaced", "--released-by", "C. Chief").Expect(0).Out);

        Run("job", "new", "--truck", "Yard 5").Expect(0);
        string stays = Run("job", "close", "J2", "--not-released").Expect(0).Out;
        Assert.Contains(NotReleased, stays, StringComparison.Ordinal);
        Assert.Contains("`loggerbox job gate J2 zero-again plugs-dry oil-after chocks-away road-test --by NAME`, then release it with `loggerbox job close J2 --released-by NAME`", stays, StringComparison.Ordinal);
        string list = Run("job", "show").Expect(0).Out;
        Assert.Matches(@"J1 .*Yard 4.* released", list);
        Assert.Matches(@"J2 .*Yard 5.* closed, NOT RELEASED", list);
    }

    [Fact]
    public void A_job_shows_which_gates_are_open_and_who_ticked_the_others()
    {
        Run("job", "new", "--truck", "Yard 4").Expect(0);
        Assert.Contains("Open: chocks, parking-brake", Run("job", "gate", "J1", "stands", "--by", "A. Fitter", "--note", "on stands").Expect(0).Out, StringComparison.Ordinal);
        JsonElement job = JsonDocument.Parse(Run("job", "show", "J1", "--json").Expect(0).Out).RootElement;
        Assert.False(job.GetProperty("released").GetBoolean());
        JsonElement[] gates = [.. job.GetProperty("gates").EnumerateArray()];
        JsonElement stands = Assert.Single(gates, gate => gate.GetProperty("ticked").GetBoolean());
        Assert.Equal(("stands", "idle", "A. Fitter", "on stands"), (Text(stands, "gate"), Text(stands, "stage"), Text(stands, "by"), Text(stands, "note")));
        Assert.Equal(JsonValueKind.Null, gates[0].GetProperty("by").ValueKind);

        string shown = Run("job", "show", "J1").Expect(0).Out;
        Assert.StartsWith("Job J1: NOT RELEASED\n", shown);
        Assert.Matches(@"✓ +stands .*A\. Fitter, .*: on stands", shown);
        Assert.Matches(@"open +road-test ", shown);
        Assert.Contains("cardboard, never a hand", shown, StringComparison.Ordinal);

        Run("job", "gate", "J1", "stands", "--by", "B. Smith", "--note", "moved", "--withdraw").Expect(0);
        Assert.Matches(@"open +stands ", Run("job", "show", "J1").Expect(0).Out);
    }

    [Fact]
    public void What_is_no_gate_or_answers_to_nobody_is_refused()
    {
        Run("job", "new", "--truck", "Yard 4").Expect(0);
        Run("job", "gate", "J1", "chalks", "--by", "A").Refused(1, "'chalks' is no gate", "chocks");
        Run("job", "gate", "J1", "chocks").Refused(2, "--by");
        Run("job", "gate", "J1", "chocks", "--by", "").Refused(2, "--by");
        Run("job", "gate", "J1", "--by", "A").Refused(2, "job gate --help");
        Run("job", "gate", "J1", "oil-read", "--by", "A").Refused(1, "oil-read", "how they were read", "--note");
        Run("job", "gate", "J9", "chocks", "--by", "A").Refused(1, "J9");
        Run("job", "gate", "J1", "chocks", "--by", "A", "--withdraw").Refused(1, "nothing to withdraw");
    }

    [Fact]
    public void Every_report_says_that_the_truck_is_not_released_until_it_is()
    {
        const string Hostile = "<b>C.</b> \u202Efeihc =1+1";
        LoggerBoxCommand.Run("demo", "--cause", "pump-worn", "--out", bench.At("")).Expect(0);
        Assert.Contains(NotReleased, Run("judge", "J1").Expect(0).Out, StringComparison.Ordinal);
        Assert.Contains(NotReleased, Report("before.html"), StringComparison.Ordinal);
        Assert.Contains(NotReleased, File.ReadAllText(bench.At("report.html")), StringComparison.Ordinal);

        // A session by itself belongs to no work order as judge sees it, and says nothing of a release.
        Assert.DoesNotContain(NotReleased, Run("judge", "S1", "--sheet", bench.At("sample-truck.toml")).Expect(0).Out, StringComparison.Ordinal);

        Run("job", "gate", "J1", "oil-read", "plugs-dry", "oil-after", "chocks-away", "road-test", "--by", Hostile, "--note", Hostile).Expect(0);
        Run("job", "close", "J1", "--correction", "pump replaced", "--released-by", Hostile).Expect(0);
        string text = Run("judge", "J1").Expect(0).Out;
        Assert.Contains("Released by <b>C.</b>  feihc =1+1, ", text, StringComparison.Ordinal);
        string page = Report("after.html");
        Assert.Contains("Released by &lt;b&gt;C.&lt;/b&gt;  feihc =1+1, ", page, StringComparison.Ordinal);
        Assert.All((string[])[text, page], one => Assert.DoesNotContain('\u202E', one));
        Assert.All((string[])[text, page], one => Assert.DoesNotContain(NotReleased, one, StringComparison.Ordinal));
    }

    [Fact]
    public void A_release_is_taken_back_by_name_and_never_by_closing_again()
    {
        Run("job", "new", "--truck", "Yard 4").Expect(0);
        Release("J1", "--cause", "pump worn", "--correction", "pump replaced");
        Run("job", "close", "J1", "--not-released").Refused(1, "J1", "released by Kim", "job gate J1 release --withdraw");
        Run("job", "close", "J1", "--not-released", "--cause", "another").Refused(1, "J1", "nothing was changed");
        Run("job", "gate", "J1", "release", "--withdraw", "--by", "Kim").Expect(0);
        Assert.Contains(NotReleased, Run("job", "close", "J1", "--not-released").Expect(0).Out, StringComparison.Ordinal);
        Run("job", "close", "J1", "--not-released", "--cause", "another").Refused(1, "J1", "has its cause", "job correct J1 --cause TEXT --by NAME");
        Assert.Contains("pump worn", Run("job", "show", "J1").Expect(0).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_truck_whose_suspect_stands_is_not_released_without_a_word_on_it()
    {
        LoggerBoxCommand.Run("demo", "--cause", "pump-worn", "--out", bench.At("")).Expect(0);
        Run("job", "close", "J1", "--released-by", "Kim").Refused(1, "no correction is written", "`loggerbox job gate J1 plugs-dry oil-after chocks-away road-test --by NAME`, then release it");
        Run("job", "gate", "J1", "plugs-dry", "oil-after", "chocks-away", "road-test", "--by", "Kim").Expect(0);
        Run("job", "close", "J1", "--released-by", "Kim").Refused(1, "J1", "no correction is written", "--correction", "--as after");
        Run("job", "close", "J1", "--released-by", "Kim", "--correction", "pump replaced").Expect(0);
        string text = Run("judge", "J1").Expect(0).Out;
        Assert.Contains("Nothing was measured after the correction.", text, StringComparison.Ordinal);
        Assert.Contains("(measured before the repair; nothing was measured after it)", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_ticked_after_the_test_was_not_looked_at_before_it()
    {
        LoggerBoxCommand.Run("demo", "--out", bench.At("")).Expect(0);
        string before = Words(Run("judge", "J1").Expect(0).Out);
        Assert.Contains("Not ticked before the test: oil level and temperature.", before, StringComparison.Ordinal);
        Assert.DoesNotContain("Ticked after the test", before, StringComparison.Ordinal);
        Run("job", "gate", "J1", "oil-read", "--by", "Kim", "--note", "full, hot").Expect(0);
        Assert.Contains("Ticked after the test, not before it: oil level and temperature.", Words(Run("judge", "J1").Expect(0).Out), StringComparison.Ordinal);
        Assert.Matches("✓ +oil-read .*Kim, .*, after the test: full, hot", Run("job", "show", "J1").Expect(0).Out);
    }

    [Fact]
    public void Gates_travel_with_the_job_file()
    {
        LoggerBoxCommand.Run("demo", "--out", bench.At("")).Expect(0);
        Run("export", "J1", "--out", bench.At("job.lbjob")).Expect(0);
        LoggerBoxCommand.Run("import", bench.At("job.lbjob"), "--archive", bench.At("second.sqlite")).Expect(0);
        string there = LoggerBoxCommand.Run("job", "show", "J1", "--json", "--archive", bench.At("second.sqlite")).Expect(0).Out;
        Assert.Equal(Run("job", "show", "J1", "--json").Expect(0).Out, there);
        Assert.Contains("invented", there, StringComparison.Ordinal);
    }

    private CommandResult Run(params string[] words) => LoggerBoxCommand.Run([.. words, "--archive", bench.Archive]);

    private void Release(string job, params string[] more)
    {
        Run("job", "gate", job, "zero-again", "plugs-dry", "oil-after", "chocks-away", "road-test", "--by", "Kim").Expect(0);
        Run(["job", "close", job, "--released-by", "Kim", .. more]).Expect(0);
    }

    /// <summary>As one line: where a line ends depends on what stands before it.</summary>
    private static string Words(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private string Report(string name)
    {
        Run("report", "J1", "--out", bench.At(name)).Expect(0);
        return File.ReadAllText(bench.At(name));
    }

    private static string? Text(JsonElement element, string name) => element.GetProperty(name).GetString();
}
