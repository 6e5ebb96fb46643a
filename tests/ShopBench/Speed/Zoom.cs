using System;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using LoggerBox.Shop.Tests;

namespace LoggerBox.ShopBench.Speed;

/// <summary>Turns the wheel in and out again, a notch a frame, and beside it looks at a page with nothing on it: the browser's own tick.</summary>
internal static class Zoom
{
    private const int Turns = 480;
    private const double MostMilliseconds = 16;

    // A frame's work is all until it is handed over: scripts, layout and canvas. A message that is sent in the frame is read right after that.
    private const string Frames = """
        async turns => {
          const strips = document.querySelector('.strips');
          const left = strips ? strips.getBoundingClientRect().left + 400 : 0;
          const channel = new MessageChannel();
          const scripts = [], work = [], frames = [];
          let last = 0;
          for (let turn = 0; turn < turns; turn++) {
            await new Promise(requestAnimationFrame);
            const begin = performance.now();
            if (last > 0) { frames.push(begin - last); }
            last = begin;
            strips?.dispatchEvent(new WheelEvent('wheel', { deltaY: turn % 80 < 40 ? -1 : 1, clientX: left, cancelable: true }));
            await null; await null; await null;
            scripts.push(performance.now() - begin);
            const handed = new Promise(read => channel.port1.onmessage = read);
            channel.port2.postMessage(0);
            await handed;
            work.push(performance.now() - begin);
          }
          return { scripts, work, frames };
        }
        """;

    public static async Task Measure(Browser browser, string folder, string archive)
    {
        using var serve = ServedShop.Start(folder, ["--archive", archive]);
        await using Visitor visitor = await browser.Visit(new Uri(serve.Address), "/job/J1#trace-S1");
        await visitor.Page.WaitForFunctionAsync("() => document.querySelector('.figure').dataset.shown");
        await serve.WaitUntilIdle();
        await visitor.Page.EvaluateAsync("document.querySelector('.strips').scrollIntoView()");
        JsonElement zoom = (await visitor.Page.EvaluateAsync(Frames, Turns))!.Value;
        await visitor.Page.GotoAsync("about:blank");
        JsonElement nothing = (await visitor.Page.EvaluateAsync(Frames, Turns))!.Value;
        Say("zoom, work of a frame until it is handed over", zoom, "work");
        Late(zoom);
        Say("    of it scripts", zoom, "scripts");
        Say("zoom, from frame to frame", zoom, "frames");
        Say("an empty page in the same browser, from frame to frame", nothing, "frames");
        Say("    work of a frame until it is handed over", nothing, "work");
    }

    private static void Late(JsonElement times)
    {
        double[] work = times.GetProperty("work").Deserialize<double[]>()!;
        Console.WriteLine($"    more than {MostMilliseconds} ms: {work.Count(one => one > MostMilliseconds)} of {work.Length} frames");
    }

    private static void Say(string what, JsonElement times, string name) => SpeedBench.Say(what, times.GetProperty(name).Deserialize<double[]>()!);
}
