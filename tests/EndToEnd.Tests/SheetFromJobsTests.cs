using System;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

public class SheetFromJobsTests
{
    [Fact]
    public void Healthy_jobs_give_limits_that_hold_them_and_that_say_where_they_are_from()
    {
        using var bench = new Workbench();
        for (int seed = 1; seed <= 4; seed++)
        {
            Job(bench, "healthy", seed);
        }

        Job(bench, "pump-worn", 5);
        string sheet = bench.At("drawn.toml");
        LoggerBoxCommand.Run("sheet", "from", "J1", "J2", "J3", "--out", sheet, "--archive", bench.Archive).Expect(0);
        string three = File.ReadAllText(sheet);
        Assert.Contains("drawn_from_jobs = \"J1, J2, J3\"", three, StringComparison.Ordinal);
        Assert.Contains("not the manual's", three, StringComparison.Ordinal);
        Assert.Empty(LoggerBoxCommand.Run("sheet", "check", sheet).Expect(0).Error);

        LoggerBoxCommand.Run("sheet", "from", "J1", "J2", "J3", "J4", "--out", sheet, "--archive", bench.Archive, "--unit", "bar").Expect(0);
        string four = File.ReadAllText(sheet);
        Assert.Contains("unit = \"bar\"", four, StringComparison.Ordinal);
        Assert.True(Width(four, "governed_rpm") < Width(three, "governed_rpm"));

        var judgement = new JudgementText(LoggerBoxCommand.Run("judge", "J4", "--archive", bench.Archive, "--sheet", sheet, "--json").Expect(0).Out);
        Assert.Contains("sheet-from-jobs", judgement.Validity);
        Assert.All(judgement.Root.GetProperty("checks").EnumerateArray(), check => Assert.Contains(check.GetProperty("verdict").GetString(), (string[])["in", "close-low", "close-high"]));
        LoggerBoxCommand.Run("sheet", "from", "J1", "J2", "J5", "--out", bench.At("none.toml"), "--archive", bench.Archive).Refused(1, "J5");
        Assert.DoesNotContain("none.toml", bench.Files());
    }

    [Fact]
    public void Too_few_jobs_the_same_one_twice_and_other_trucks_are_refused()
    {
        using var bench = new Workbench();
        Job(bench, "healthy", 1);
        Job(bench, "healthy", 2);
        Job(bench, "healthy", 3, "Another truck");
        string[] rest = ["--out", bench.At("none.toml"), "--archive", bench.Archive];
        LoggerBoxCommand.Run(["sheet", "from", "J1", "J2", .. rest]).Refused(1, "3", "2 are named");
        LoggerBoxCommand.Run(["sheet", "from", "J1", "J2", "J1", .. rest]).Refused(1, "2 are named");
        LoggerBoxCommand.Run(["sheet", "from", "J1", "J2", "J3", .. rest]).Refused(1, "J3", "Another truck");
        Assert.DoesNotContain("none.toml", bench.Files());
    }

    private static void Job(Workbench bench, string cause, int seed, string truck = "Yard truck")
    {
        string name = $"{cause}-{seed}";
        LoggerBoxCommand.Run("demo", "--cause", cause, "--seed", $"{seed}", "--out", bench.At(name)).Expect(0);
        string trace = bench.At(name + ".csv");
        LoggerBoxCommand.Run("export", "S1", "--archive", bench.At(name + "/archive.sqlite"), "--out", trace).Expect(0);
        LoggerBoxCommand.Run("job", "new", "--archive", bench.Archive, "--truck", truck, "--serial", $"SN-{seed}", "--oil", "80", "--sheet", bench.At(name + "/sample-truck.toml")).Expect(0);
        string session = Regex.Match(LoggerBoxCommand.Run("import", trace, "--archive", bench.Archive).Expect(0).Out, "S[0-9]+").Value;
        string job = Regex.Matches(LoggerBoxCommand.Run("job", "show", "--archive", bench.Archive).Expect(0).Out, "J[0-9]+").Last().Value;
        LoggerBoxCommand.Run("job", "add", job, session, "--archive", bench.Archive).Expect(0);
    }

    private static double Width(string sheet, string key)
    {
        Match limit = Regex.Match(sheet, key + @" = \{ min = ([0-9.]+), max = ([0-9.]+) \}");
        return double.Parse(limit.Groups[2].Value, CultureInfo.InvariantCulture) - double.Parse(limit.Groups[1].Value, CultureInfo.InvariantCulture);
    }
}
