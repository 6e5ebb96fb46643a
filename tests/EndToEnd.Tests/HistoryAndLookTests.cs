using System;
using System.Globalization;
using System.Linq;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

public class HistoryAndLookTests
{
    [Fact]
    public void A_trucks_readings_over_the_years_show_what_drifted_and_which_sheet_each_job_had()
    {
        using var bench = new Workbench();
        (string Cause, int Seed, int Hours)[] visits = [("healthy", 1, 1000), ("healthy", 2, 2500), ("pump-worn", 3, 6000)];
        foreach ((string cause, int seed, int hours) in visits)
        {
            Job(bench, cause, seed, hours);
        }

        JsonElement[] history = [.. JsonDocument.Parse(LoggerBoxCommand.Run("history", "SN-7", "--archive", bench.Archive, "--unit", "psi", "--json").Expect(0).Out).RootElement.EnumerateArray()];
        JsonElement main = history.Single(one => one.GetProperty("reading").GetString() == "pressure.idle.neutral.main");
        Assert.Equal(3, main.GetProperty("values").GetArrayLength());
        Assert.True(main.GetProperty("changed").GetBoolean() && main.GetProperty("drifts").GetBoolean(), main.ToString());
        Assert.True(main.GetProperty("slope_1000h").GetDouble() < 0);
        JsonElement governed = history.Single(one => one.GetProperty("reading").GetString() == "engine.governed_rpm");
        Assert.True(Math.Abs(governed.GetProperty("change").GetDouble()) < 60);
        Assert.Contains("changed, drifts", LoggerBoxCommand.Run("history", "SN-7", "--archive", bench.Archive).Expect(0).Out, StringComparison.Ordinal);
        LoggerBoxCommand.Run("history", "SN-8", "--archive", bench.Archive).Refused(1, "SN-8", "needs two");

        JsonElement[] sheets = [.. JsonDocument.Parse(LoggerBoxCommand.Run("sheet", "list", "--archive", bench.Archive, "--json").Expect(0).Out).RootElement.EnumerateArray()];
        Assert.Equal(2, sheets.Length);
        string judged = LoggerBoxCommand.Run("judge", "J3", "--archive", bench.Archive, "--json").Expect(0).Out;
        string version = new JudgementText(judged).Root.GetProperty("sheet").GetProperty("version").GetString()!;
        Assert.Equal("J3", sheets.Single(sheet => sheet.GetProperty("version").GetString() == version).GetProperty("jobs")[0].GetString());
    }

    [Fact]
    public void The_one_slow_engagement_of_a_days_work_stands_first()
    {
        using var bench = new Workbench();
        string trace = bench.Write("day.csv", DaysWork(120, 77));
        JsonElement[] seen = [.. JsonDocument.Parse(LoggerBoxCommand.Run("look", trace, "--json").Expect(0).Out).RootElement.EnumerateArray()];
        Assert.InRange(seen.Count(one => one.GetProperty("kind").GetString() == "engagement"), 115, 120);
        Assert.True(seen[0].GetProperty("odd").GetBoolean());
        Assert.InRange(seen[0].GetProperty("start_s").GetDouble(), (77 * 60) + 19, (77 * 60) + 22);
        Assert.InRange(seen[0].GetProperty("value").GetDouble(), 2.2, 3.2);
        Assert.InRange(seen[0].GetProperty("usual").GetDouble(), 0.7, 1.3);
        Assert.Single(seen, one => one.GetProperty("odd").GetBoolean());
        string text = LoggerBoxCommand.Run("look", trace).Expect(0).Out;
        Assert.Contains("1 unlike the others", text, StringComparison.Ordinal);
        Assert.Contains("1:17:", text, StringComparison.Ordinal);
    }

    /// <summary>Two hours of shuttling, 20 rows a second, no test step in it: each minute forward for half of it, the clutch full after a second, once after two and a half.</summary>
    private static string DaysWork(int minutes, int slowMinute)
    {
        var text = new StringBuilder("time_s,rpm,main_kPa,clutch_kPa,gear\n");
        Random random = new(7);
        for (int i = 0; i < minutes * 60 * 20; i++)
        {
            double second = i / 20.0;
            int minute = i / 1200;
            double inMinute = second - (minute * 60) - 20;
            bool forward = inMinute is >= 0 and < 30;
            double full = minute == slowMinute ? 2.6 : 0.95 + (0.1 * Math.Sin(minute));
            double share = !forward ? 0 : inMinute < full * 0.4 ? 0.15 : Math.Min(1, 0.15 + (0.85 * (inMinute - (full * 0.4)) / (full * 0.6)));
            double drive = forward && inMinute is > 6 and < 26 ? 900 * Math.Min(1, Math.Min(inMinute - 6, 26 - inMinute) / 3) : 0;
            double rpm = 750 + drive + (random.NextDouble() * 8);
            double main = 420 + (0.3 * drive) + (random.NextDouble() * 3);
            text.Append(CultureInfo.InvariantCulture, $"{second:0.00},{rpm:0.0},{main:0.0},{(main * 0.95 * share) + random.NextDouble():0.0},{(forward ? 'F' : 'N')}\n");
        }

        return text.ToString();
    }

    private static void Job(Workbench bench, string cause, int seed, int hours)
    {
        string name = $"{cause}-{seed}";
        LoggerBoxCommand.Run("demo", "--cause", cause, "--seed", $"{seed}", "--out", bench.At(name)).Expect(0);
        string trace = bench.At(name + ".csv");
        LoggerBoxCommand.Run("export", "S1", "--archive", bench.At(name + "/archive.sqlite"), "--out", trace).Expect(0);
        string sheet = bench.At(name + "/sample-truck.toml");
        if (seed == 3)
        {
            System.IO.File.AppendAllText(sheet, "\n[site]\naltitude_m = 100\n");
        }

        LoggerBoxCommand.Run("job", "new", "--archive", bench.Archive, "--serial", "SN-7", "--hours", $"{hours}", "--oil", "80", "--sheet", sheet).Expect(0);
        string session = Regex.Match(LoggerBoxCommand.Run("import", trace, "--archive", bench.Archive).Expect(0).Out, "S[0-9]+").Value;
        string job = Regex.Matches(LoggerBoxCommand.Run("job", "show", "--archive", bench.Archive).Expect(0).Out, "J[0-9]+").Last().Value;
        LoggerBoxCommand.Run("job", "add", job, session, "--archive", bench.Archive).Expect(0);
    }
}
