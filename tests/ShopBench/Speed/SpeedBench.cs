using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using LoggerBox.EndToEnd.Tests;
using LoggerBox.Shop.Tests;
using Microsoft.Playwright;

namespace LoggerBox.ShopBench.Speed;

/// <summary>
/// How long until the picture of a million sample sets stands, counted by the browser from the moment that it asks for the page; and what a frame
/// takes while a hand turns the wheel.
/// </summary>
internal static class SpeedBench
{
    private const int Starts = 5;

    // The wheel is turned in and out again; what is counted is all work of a turn up to the drawn canvas, and the time between two frames.
    private const string TurnTheWheel = """
        async () => {
          const strips = document.querySelector('.strips');
          const left = strips.getBoundingClientRect().left + 400;
          const work = [];
          const frames = [];
          let last = 0;
          for (let turn = 0; turn < 480; turn++) {
            await new Promise(requestAnimationFrame);
            const begin = performance.now();
            if (last > 0) { frames.push(begin - last); }
            last = begin;
            strips.dispatchEvent(new WheelEvent('wheel', { deltaY: turn % 80 < 40 ? -1 : 1, clientX: left, cancelable: true }));
            await null; await null; await null;
            work.push(performance.now() - begin);
          }
          return { work, frames };
        }
        """;

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
            List<double> ahead = [];
            List<double> unread = [];
            List<double> work = [];
            for (int i = 0; i < Starts; i++)
            {
                using var serve = ServedShop.Start(folder, ["--archive", archive]);
                ahead.Add(await browser.TimeOfPicture(serve, "/job/J2#trace-S2"));
                TimeSpan before = serve.ProcessorTime;
                unread.Add(await browser.TimeOfPicture(serve, "/job/J1#trace-S1"));
                work.Add((serve.ProcessorTime - before).TotalMilliseconds);
            }

            Say("first picture, newest job, which is read ahead", ahead);
            Say("first picture, another job that was never read", unread);
            Say("processor time of the program for it, on all processors", work);
            await Zoom(browser, folder, archive);
            Load("after");
            await browser.DisposeAsync();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Two jobs, each with a recording of its own.</summary>
    private static void Prepare(string folder, string archive)
    {
        string trace = Path.Combine(folder, "million.csv");
        foreach ((string recording, int number) in ((string, int)[])[("healthy", 1), ("stator-slipping", 2)])
        {
            LongRecording.Write(Recordings.Trace(recording), trace);
            LoggerBoxCommand.Run("import", trace, "--archive", archive).Expect(0);
            LoggerBoxCommand.Run("job", "new", "--truck", "A million", "--sheet", Recordings.Sheet(recording), "--archive", archive).Expect(0);
            LoggerBoxCommand.Run("job", "add", $"J{number}", $"S{number}", "--archive", archive).Expect(0);
        }

        Console.WriteLine($"twice {LongRecording.Rows} sample sets, {new FileInfo(archive).Length / 1e6:F1} MB");
    }

    private static async Task<double> TimeOfPicture(this Browser browser, ServedShop serve, string path)
    {
        await using Visitor visitor = await browser.Visit(new Uri(serve.Address), "/");
        await serve.WaitUntilIdle();
        await visitor.Go(path);
        await visitor.Page.WaitForFunctionAsync("() => performance.getEntriesByName('trace-drawn').length > 0");
        return await visitor.Page.EvaluateAsync<double>("performance.getEntriesByName('trace-drawn')[0].startTime");
    }

    private static async Task Zoom(Browser browser, string folder, string archive)
    {
        using var serve = ServedShop.Start(folder, ["--archive", archive]);
        await using Visitor visitor = await browser.Visit(new Uri(serve.Address), "/job/J2#trace-S2");
        await visitor.Page.WaitForFunctionAsync("() => document.querySelector('.figure').dataset.shown");
        JsonElement times = (await visitor.Page.EvaluateAsync(TurnTheWheel))!.Value;
        Say("zoom, work of a frame", Numbers(times, "work"));
        Say("zoom, from frame to frame", Numbers(times, "frames"));
    }

    private static List<double> Numbers(JsonElement times, string name) => [.. times.GetProperty(name).EnumerateArray().Select(time => time.GetDouble())];

    private static void Say(string what, List<double> times)
    {
        double[] sorted = [.. times.Order()];
        double At(double share) => sorted[(int)(share * (sorted.Length - 1))];
        Console.WriteLine(FormattableString.Invariant($"{what,-60} median {At(0.5),7:F1} ms, 95 % {At(0.95),7:F1} ms, longest {sorted[^1],7:F1} ms"));
    }

    private static void Load(string when)
    {
        if (File.Exists("/proc/loadavg"))
        {
            Console.WriteLine($"load of the machine {when}: {File.ReadAllText("/proc/loadavg").Trim()}, {Environment.ProcessorCount} processors");
        }
    }
}
