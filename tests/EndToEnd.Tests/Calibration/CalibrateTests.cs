using System;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using LoggerBox.EndToEnd.Tests.Watching;
using Xunit;

namespace LoggerBox.EndToEnd.Tests.Calibration;

/// <summary>`calibrate` beside a virtual logger on a bench: two processes and a real line. What the pump's gauge says is the truth.</summary>
public sealed class CalibrateTests : IDisposable
{
    private readonly Workbench bench = new();

    private string[] Words => ["--reference", "dead-weight tester DW-1", "--certificate", "C-77", "--certified", "2026-01-10", "--reference-due", "2099-01-10", "--by", "A. Fitter", "--archive", bench.Archive, "--patience", "60"];

    public void Dispose() => bench.Dispose();

    [Fact]
    public async Task A_channel_that_was_off_reads_the_reference_afterwards_and_the_report_names_it()
    {
        using (BenchLogger logger = new(bench, "0", "--store", bench.At("card")))
        {
            CommandResult done = await logger.Calibrate([.. Words, "--channel", "main", "--at", "0", "--at", "100psi", "--at", "450psi", "--transducer", "main=TX-5 no. 12", "--yes"]);
            Assert.Contains("Stored and read back: main.", done.Expect(0).Out, StringComparison.Ordinal);
            Assert.Contains("CAUTION. Engine off. Hydraulic pressure", done.Out, StringComparison.Ordinal);
            Assert.Matches(@"450 psi +[+-]0\.0\d\d psi", done.Out);

            JsonElement[] held = [.. JsonDocument.Parse(Run("calibrate", "--port", logger.Port, "--show", "--json").Expect(0).Out).RootElement.EnumerateArray()];
            Assert.Equal(("TX-5 no. 12", "dead-weight tester DW-1", "C-77", "2099-01-10"), (Text(held[0], "transducer"), Text(held[0], "reference"), Text(held[0], "certificate"), Text(held[0], "reference_due")));
            Assert.Equal(JsonValueKind.Null, held[1].GetProperty("calibrated").ValueKind);
            Assert.Contains("calibrated ", Run("calibrate", "--port", logger.Port, "--show").Expect(0).Out, StringComparison.Ordinal);
        }

        // From its next session on: the same transducer between the points that it was calibrated at, against the pump's gauge. Noise of 5 counts is 0.2 psi.
        File.Delete(bench.At("card"));
        using (BenchLogger logger = new(bench, "300psi", "--store", bench.At("card")))
        {
            double[] main = [.. (await Watched(logger.Port, 12)).Select(moment => moment.GetProperty("main").GetProperty("value"))
                .Where(value => value.ValueKind == JsonValueKind.Number).Select(value => value.GetDouble())];
            Assert.InRange(main.Length, 9, 12);
            Assert.Equal(300, main.Average(), 0.35);
        }

        File.Delete(bench.At("card"));
        using SimulatedLogger truck = SimulatedLogger.Start("--store", bench.At("card"), "--tcp");
        Run("fetch", "--port", truck.Port).Expect(0);
        string sheet = bench.Write("sample.toml", TruckSimulator.Demo.SampleSheet.Text());
        Run("job", "new", "--sheet", sheet).Expect(0);
        Run("job", "add", "J1", "S1").Expect(0);
        Run("report", "J1", "--out", bench.At("r.html")).Expect(0);
        string page = File.ReadAllText(bench.At("r.html"));
        foreach (string part in (string[])["TX-5 no. 12, 4 to 20 mA for 5", "by A. Fitter against dead-weight tester DW-1, certificate C-77 of 2026-01-10 (good until 2099-01-10)", "no calibration of it on record here"])
        {
            Assert.Contains(part, page, StringComparison.Ordinal);
        }

        Assert.DoesNotContain("OVERDUE", page, StringComparison.Ordinal);
        Run("export", "J1", "--out", bench.At("j.lbjob")).Expect(0);
        LoggerBoxCommand.Run("import", bench.At("j.lbjob"), "--archive", bench.At("second.sqlite")).Expect(0);
        Assert.Contains("certificate C-77", LoggerBoxCommand.Run("judge", "J1", "--archive", bench.At("second.sqlite")).Expect(0).Out, StringComparison.Ordinal);
    }

    [LinuxFact]
    public void On_a_terminal_it_asks_step_by_step_and_stores_only_after_a_yes()
    {
        using BenchLogger logger = new(bench);
        Answer(logger, "no", out string refused, out string status);
        Assert.Equal("1", status);
        Assert.Contains("Nothing was stored", refused, StringComparison.Ordinal);
        Assert.Contains("never calibrated", Run("calibrate", "--port", logger.Port, "--show").Expect(0).Out, StringComparison.Ordinal);

        logger.Set("0");
        Answer(logger, "yes", out string error, out status);
        Assert.Equal(("0", ""), (status, error));
        Assert.Contains("by B. Smith against master gauge 7, certificate K-1 of 2026-02-01", Run("calibrate", "--port", logger.Port, "--show").Expect(0).Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_pressure_that_does_not_stand_or_never_comes_and_a_loop_that_is_open_are_refused()
    {
        using BenchLogger logger = new(bench);
        string[] quick = [.. Words[..^2], "--channel", "main", "--at", "0", "--at", "100psi", "--at", "450psi", "--yes", "--patience", "8"];
        (await logger.Calibrate(quick, line => { })).Refused(1, "main never came near 100 psi", "reads about", "Nothing was stored");

        logger.Set("-120psi");
        (await logger.Calibrate(quick, line => { })).Refused(1, "loop of main is open", "Nothing was stored");

        logger.Set("0");
        bool shaking = true;
        Task hand = Task.Run(async () =>
        {
            for (int i = 0; shaking; i++)
            {
                logger.Set(i % 2 == 0 ? "8psi" : "-8psi");
                await Task.Delay(400);
            }
        });
        CommandResult moved = await logger.Calibrate(quick, line => { });
        shaking = false;
        await hand;
        moved.Refused(1, "main never stood still at 0.0 psi", "Nothing was stored");
        Assert.Contains("never calibrated", Run("calibrate", "--port", logger.Port, "--show").Expect(0).Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_logger_that_goes_in_the_middle_leaves_nothing_stored_and_says_so()
    {
        using BenchLogger logger = new(bench, "0", "--tcp");
        CommandResult cut = await logger.Calibrate([.. Words, "--channel", "main", "--at", "0", "--at", "100psi", "--at", "450psi", "--yes"], line =>
        {
            if (line.Contains("waiting for 100 psi", StringComparison.Ordinal))
            {
                logger.Kill();
            }
        });
        cut.Refused(1, logger.Port, "Nothing was stored: the logger holds what it held before");
    }

    [Fact]
    public async Task What_makes_no_calibration_is_refused_before_anybody_sets_a_pressure()
    {
        using BenchLogger logger = new(bench);
        async Task Refused(int status, string[] words, params string[] parts) => (await logger.Calibrate(words)).Refused(status, parts);
        await Refused(1, [.. Words, "--yes", "--channel", "main", "--at", "0", "--at", "400psi", "--at", "450psi"], "main", "nearer to each other", "--at");
        await Refused(1, [.. Words, "--yes", "--channel", "main", "--at", "0", "--at", "450psi", "--at", "100psi"], "main", "go up from zero");
        await Refused(1, [.. Words, "--yes", "--at", "0", "--at", "100psi", "--at", "450psi"], "converter", "outside the transducer's range");
        await Refused(1, [.. Words, "--yes", "--transducer", "main=" + new string('x', 49)], "48 bytes");
        await Refused(2, [.. Words, "--yes", "--at", "0", "--at", "400pounds"], "'400pounds' is no pressure");
        await Refused(2, [.. Words, "--yes", "--transducer", "mian=TX"], "--transducer", "mian=TX");
        await Refused(2, [.. Words, "--yes", "--channel", "mian"], "mian");
        await Refused(2, [.. Words, "--yes", "--due", "2026-01-01"], "--due");
        await Refused(2, [.. Words, "--yes", "--certified", "10.1.2026"], "--certified");
        await Refused(2, [.. Words], "--yes");
        await Refused(2, ["--yes", "--archive", bench.Archive], "--reference", "--certificate", "--by");
        string[] old = [.. Words.Select(word => word == "2099-01-10" ? "2026-01-11" : word)];
        await Refused(1, [.. old, "--yes"], "dead-weight tester DW-1", "2026-01-11", "proves nothing");
        using SimulatedLogger idle = SimulatedLogger.Start();
        LoggerBoxCommand.Run(["calibrate", "--port", idle.Port, .. Words, "--yes"]).Refused(1, idle.Port, "not recording", "Nothing was stored");
        LoggerBoxCommand.Run("simulate", "--bench", bench.At("none")).Refused(1, "none", "says no pressure");
    }

    private void Answer(BenchLogger logger, string last, out string error, out string status)
    {
        using ScreenInATerminal screen = new("calibrate", "--port", logger.Port, "--channel", "clutch", "--at", "0", "--at", "1bar", "--at", "25bar", "--archive", bench.Archive);
        foreach ((string question, string answer) in ((string, string)[])
            [("master gauge", "master gauge 7"), ("Number of", "K-1"), ("Day of", "2026-02-01"), ("Day until", "2099-02-01"), ("Who calibrates", "B. Smith")])
        {
            screen.WaitFor(question);
            screen.Press(answer + "\n");
        }

        screen.WaitFor("CAUTION");
        screen.WaitFor("hose open to air. Enter");
        screen.Press("\n");
        foreach (string pressure in (string[])["1.00 bar", "25.00 bar"])
        {
            screen.WaitFor($"up to {pressure}");
            logger.Set(pressure);
            screen.Press("\n");
            screen.WaitFor($"{pressure} reads");
        }

        screen.WaitFor("Store this on the logger?");
        screen.Press(last + "\n");
        screen.WaitForItsEnd();
        (error, status) = (screen.Error, screen.Status);
    }

    private static async Task<JsonElement[]> Watched(string port, int count)
    {
        using Process watch = LoggerBoxCommand.Start("watch", "--port", port, "--json", "--unit", "psi");
        JsonElement[] moments = new JsonElement[count];
        for (int i = 0; i < count; i++)
        {
            moments[i] = JsonDocument.Parse((await watch.StandardOutput.ReadLineAsync().WaitAsync(TimeSpan.FromSeconds(60)))!).RootElement;
        }

        watch.Kill();
        return moments;
    }

    private CommandResult Run(params string[] words) => LoggerBoxCommand.Run([.. words, "--archive", bench.Archive]);

    private static string? Text(JsonElement element, string name) => element.GetProperty(name).GetString();
}
