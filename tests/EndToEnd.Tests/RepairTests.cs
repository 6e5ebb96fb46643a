using System;
using System.IO;
using System.Linq;
using System.Text.Json;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>
/// One truck before and after its repair in one work order: what is said of it is what was measured after, and nothing is said that no visit
/// measured. That a repaired truck reads as the healthy one beside it is the demonstration's own truth.
/// </summary>
public sealed class RepairTests(RepairTraces traces) : IClassFixture<RepairTraces>, IDisposable
{
    private readonly Workbench bench = new();

    public void Dispose() => bench.Dispose();

    [Theory]
    [InlineData("modulator-slow")]
    [InlineData("forward-clutch-leak")]
    public void A_repaired_truck_is_judged_by_what_was_measured_after_the_repair(string fault)
    {
        Job(Import(fault), Import("healthy"));

        JsonElement judgement = Json("judge", "J1", "--json");
        Assert.Empty(judgement.GetProperty("suspects").EnumerateArray());
        Assert.Equal(Readings(Json("judge", "S2", "--sheet", traces.Sheet, "--json")), Readings(judgement));
        string report = Report();
        Assert.Contains("What was measured is normal", report, StringComparison.Ordinal);
        Assert.Contains("What was measured is normal after the repair", report, StringComparison.Ordinal);
        Assert.DoesNotContain("Do first", report, StringComparison.Ordinal);
        Assert.Contains("Recording session S2, after the repair", report, StringComparison.Ordinal);
        Assert.DoesNotContain("Recording session S1", report, StringComparison.Ordinal);
    }

    [Fact]
    public void Dates_that_contradict_the_roles_are_said_and_the_roles_count()
    {
        Job(Import("forward-clutch-leak"), Import("healthy"));
        Run("job", "correct", "S1", "--recorded", "2026-03-02 14:20", "--by", "Kim").Expect(0);
        Run("job", "correct", "S2", "--recorded", "2026-02-01 08:00", "--by", "Kim", "--reason", "by the order book").Expect(0);

        Assert.Empty(Json("judge", "J1", "--json").GetProperty("suspects").EnumerateArray());
        string report = Report();
        Assert.Contains("The dates contradict the roles", report, StringComparison.Ordinal);
        Assert.Contains("as Kim dated it on ", report, StringComparison.Ordinal);
        Assert.Contains("by the order book", report, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_subtracted_from_what_another_visit_measured()
    {
        Run("job", "new", "--truck", "Yard 9", "--sheet", traces.Sheet).Expect(0);
        Run("job", "add", "J1", Import("forward-clutch-leak"), ImportStart("healthy", 75)).Expect(0);

        JsonElement drop = Json("judge", "J1", "--json").GetProperty("checks").EnumerateArray().Single(check => check.GetProperty("quantity").GetString() == "rpm-drop");
        Assert.InRange(drop.GetProperty("value").GetDouble(), 80, 160);
    }

    [Fact]
    public void A_test_that_was_broken_off_says_so_beside_its_suspect()
    {
        Run("job", "new", "--truck", "Yard 9", "--sheet", traces.Sheet).Expect(0);
        Run("job", "add", "J1", ImportStart("forward-clutch-leak", 75)).Expect(0);

        JsonElement judgement = Json("judge", "J1", "--json");
        Assert.NotEmpty(judgement.GetProperty("suspects").EnumerateArray());
        Assert.Matches(@"==> Suspects?: .* \(test not complete: .*no stall", Run("judge", "J1").Expect(0).Out);
    }

    [Fact]
    public void The_report_is_of_the_truck_on_the_work_order()
    {
        Job(Import("forward-clutch-leak"), Import("healthy"));
        string report = Report();
        Assert.Contains("<h1>Yard 9, serial Y9</h1>", report, StringComparison.Ordinal);
        Assert.Matches("sample-truck.toml for Sample truck, version [0-9a-f]{12}", report);
        Assert.StartsWith("job J1, after the repair: Yard 9, serial Y9\n", Run("judge", "J1").Expect(0).Out);
        Assert.Matches(@"Oil temperature</span><span>[0-9.]+ to [0-9.]+ &#176;C, as recorded", report);
    }

    [Fact]
    public void A_slip_of_the_pen_is_put_right_and_stays_readable()
    {
        Job(Import("healthy"), Import("healthy"));
        Run("job", "correct", "J1", "--serial", "Y10", "--hours", "4000.5", "--by", "Kim", "--reason", "read again").Expect(0);
        Run("job", "correct", "J1", "--serial", "Y10", "--by", "Kim").Refused(1, "serial", "job J1", "nothing was written");
        Run("job", "correct", "J1", "--by", "Kim").Refused(2, "--serial");
        Run("job", "correct", "S1", "--serial", "Y10", "--by", "Kim").Refused(2, "--recorded");
        Run("job", "correct", "S1", "--recorded", "yesterday", "--by", "Kim").Refused(2, "yesterday", "2026-03-02 14:20");
        Run("job", "correct", "J1", "--serial", "Y11").Refused(2, "--by");
        Run("job", "close", "J1", "--not-released", "--cause", "worn").Expect(0);
        Run("job", "correct", "J1", "--cause", "seal torn", "--by", "Lee").Expect(0);

        JsonElement job = Json("job", "show", "J1", "--json");
        Assert.Equal(("Y10", 4000.5, "seal torn"), (job.GetProperty("serial").GetString(), job.GetProperty("hours").GetDouble(), job.GetProperty("cause").GetString()));
        string report = Report();
        Assert.Contains("<h1>Yard 9, serial Y10</h1>", report, StringComparison.Ordinal);
        Assert.Contains("serial was &quot;Y9&quot;, is &quot;Y10&quot;: Kim, ", report, StringComparison.Ordinal);
        Assert.Contains("cause was &quot;worn&quot;, is &quot;seal torn&quot;: Lee, ", report, StringComparison.Ordinal);

        Run("export", "J1", "--out", bench.At("j.lbjob")).Expect(0);
        LoggerBoxCommand.Run("import", bench.At("j.lbjob"), "--archive", bench.At("second.sqlite")).Expect(0);
        Assert.Equal(Run("job", "show", "J1").Expect(0).Out, LoggerBoxCommand.Run("job", "show", "J1", "--archive", bench.At("second.sqlite")).Expect(0).Out);
    }

    [Fact]
    public void What_nobody_said_the_role_of_is_not_judged_beside_what_has_one()
    {
        Job(Import("forward-clutch-leak"), Import("healthy"));
        Run("job", "add", "J1", Import("modulator-slow")).Expect(0);
        JsonElement judgement = Json("judge", "J1", "--json");
        Assert.Empty(judgement.GetProperty("suspects").EnumerateArray());
        Assert.Contains(judgement.GetProperty("validity").EnumerateArray(), note => note.GetProperty("text").GetString()!.Contains("S3", StringComparison.Ordinal));
    }

    private void Job(string before, string after)
    {
        Run("job", "new", "--truck", "Yard 9", "--serial", "Y9", "--sheet", traces.Sheet).Expect(0);
        Run("job", "add", "J1", before, "--as", "before").Expect(0);
        if (after != before)
        {
            Run("job", "add", "J1", after, "--as", "after").Expect(0);
        }
    }

    private string Import(string fault) => Imported(traces.Of(fault));

    private string ImportStart(string fault, double seconds)
    {
        string[] lines = File.ReadAllLines(traces.Of(fault));
        string start = bench.At(fault + "-start.csv");
        File.WriteAllLines(start, lines.Where((line, i) => i < 2 || double.Parse(line.Split(',')[0], System.Globalization.CultureInfo.InvariantCulture) < seconds));
        return Imported(start);
    }

    private string Imported(string trace) => Run("import", trace).Expect(0).Out.Split(' ')[0];

    private static string[] Readings(JsonElement judgement) => [.. judgement.GetProperty("checks").EnumerateArray().Select(check => check.ToString())];

    private JsonElement Json(params string[] words) => JsonDocument.Parse(Run(words).Expect(0).Out).RootElement;

    private string Report()
    {
        Run("report", "J1", "--out", bench.At("report.html")).Expect(0);
        return File.ReadAllText(bench.At("report.html"));
    }

    private CommandResult Run(params string[] words) => LoggerBoxCommand.Run([.. words, "--archive", bench.Archive]);
}
