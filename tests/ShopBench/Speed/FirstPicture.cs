using System;
using System.Collections.Generic;
using System.Text.Json;
using System.Threading.Tasks;
using LoggerBox.Shop.Tests;

namespace LoggerBox.ShopBench.Speed;

/// <summary>From the moment that the browser asks for the page until the picture stands, by the browser's own clock; each time in a program just started.</summary>
internal static class FirstPicture
{
    private const int Starts = 7;

    // When the page had come, when the picture's readings were asked for and had come, when it stood.
    private const string Moments = """
        () => {
          const page = performance.getEntriesByType('navigation')[0];
          const trace = performance.getEntriesByType('resource').find(one => one.name.includes('/trace/'));
          return [page.responseStart, trace.startTime, trace.responseEnd, performance.getEntriesByName('trace-drawn')[0].startTime];
        }
        """;

    public static async Task Measure(Browser browser, string folder, string archive, int newest)
    {
        List<double[]> ahead = [];
        List<double[]> unread = [];
        List<double> work = [];
        for (int i = 0; i < Starts; i++)
        {
            using var serve = ServedShop.Start(folder, ["--archive", archive]);
            ahead.Add((await browser.Open(serve, $"/job/J{newest}#trace-S{newest}")).Moments);
            (double[] moments, double milliseconds) = await browser.Open(serve, "/job/J1#trace-S1");
            unread.Add(moments);
            work.Add(milliseconds);
        }

        Say("first picture, newest job, which is read ahead", ahead);
        Say("first picture, a job that was never read", unread);
        SpeedBench.Say("    processor time of the program for it, on all processors", work);
    }

    /// <returns>The moments, and what the program worked from the asking until the picture stood.</returns>
    private static async Task<(double[] Moments, double Work)> Open(this Browser browser, ServedShop serve, string path)
    {
        await using Visitor visitor = await browser.Visit(new Uri(serve.Address), "/");
        await serve.WaitUntilIdle();
        TimeSpan before = serve.ProcessorTime;
        await visitor.Go(path);
        await visitor.Page.WaitForFunctionAsync("() => performance.getEntriesByName('trace-drawn').length > 0");
        double work = (serve.ProcessorTime - before).TotalMilliseconds;
        JsonElement moments = (await visitor.Page.EvaluateAsync(Moments))!.Value;
        return (moments.Deserialize<double[]>()!, work);
    }

    private static void Say(string what, List<double[]> moments)
    {
        SpeedBench.Say(what, moments.ConvertAll(one => one[^1]));
        SpeedBench.Say("    of it until the page has come", moments.ConvertAll(one => one[0]));
        SpeedBench.Say("    until its scripts ask for the readings", moments.ConvertAll(one => one[1] - one[0]));
        SpeedBench.Say("    until those have come", moments.ConvertAll(one => one[2] - one[1]));
        SpeedBench.Say("    until they are drawn", moments.ConvertAll(one => one[3] - one[2]));
    }
}
