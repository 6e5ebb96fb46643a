using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using LoggerBox.EndToEnd.Tests;
using LoggerBox.Shop.Tests;

namespace LoggerBox.ShopBench.Speed;

/// <summary>How long until the picture of a million sample sets stands, and what a frame takes while a hand turns the wheel.</summary>
internal static class SpeedBench
{
    // The first is never read before it is asked for: the others, newer, take all the room that the program has for reading ahead.
    private static readonly string[] Recorded = ["healthy", "pump-worn", "stator-slipping"];

    public static async Task Run()
    {
        string folder = Directory.CreateTempSubdirectory("loggerbox-speed-").FullName;
        try
        {
            string archive = Path.Combine(folder, "archive.sqlite");
            Prepare(folder, archive);
            var browser = new Browser();
            await browser.InitializeAsync();
            Load("before");
            await FirstPicture.Measure(browser, folder, archive, newest: Recorded.Length);
            await Zoom.Measure(browser, folder, archive);
            Load("after");
            await browser.DisposeAsync();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    public static void Say(string what, IReadOnlyList<double> times)
    {
        double[] sorted = [.. times.Order()];
        double At(double share) => sorted[(int)(share * (sorted.Length - 1))];
        Console.WriteLine(FormattableString.Invariant($"{what,-62} median {At(0.5),7:F1} ms, 95 % {At(0.95),7:F1} ms, longest {sorted[^1],7:F1} ms"));
    }

    /// <summary>Some jobs, each with a recording of its own.</summary>
    private static void Prepare(string folder, string archive)
    {
        string trace = Path.Combine(folder, "million.csv");
        for (int i = 0; i < Recorded.Length; i++)
        {
            LongRecording.Write(Recordings.Trace(Recorded[i]), trace);
            LoggerBoxCommand.Run("import", trace, "--archive", archive).Expect(0);
            LoggerBoxCommand.Run("job", "new", "--truck", "A million", "--sheet", Recordings.Sheet(Recorded[i]), "--archive", archive).Expect(0);
            LoggerBoxCommand.Run("job", "add", $"J{i + 1}", $"S{i + 1}", "--archive", archive).Expect(0);
        }

        Console.WriteLine(LoggerBoxCommand.Executable);
        Console.WriteLine($"{Recorded.Length} times {LongRecording.Rows} sample sets, {new FileInfo(archive).Length / 1e6:F1} MB");
    }

    private static void Load(string when)
    {
        if (File.Exists("/proc/loadavg"))
        {
            Console.WriteLine($"load of the machine {when}: {File.ReadAllText("/proc/loadavg").Trim()}, {Environment.ProcessorCount} processors");
        }
    }
}
