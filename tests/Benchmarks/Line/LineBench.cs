using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Threading.Tasks;
using LoggerBox.Benchmarks.Table;
using LoggerBox.Link.Tests.Line;

namespace LoggerBox.Benchmarks.Line;

/// <summary>
/// How much of a line each tool fills: the length of what is sent, at the line's pace, over the time that it took. One table; a figure
/// for each seed. `line [--seeds N] [--bauds 115200,921600] [--errors 0,1e-5,1e-4]`.
/// </summary>
internal static class LineBench
{
    private const int Length = 131_072;

    // A quarter of the line: who is slower is not waited for.
    private const double LeastShare = 0.25;

    private static readonly ITransfer[] Transfers = [new OwnTransfer(), ToolTransfer.Zmodem, ToolTransfer.Kermit];

    public static int Run(string[] words)
    {
        int seeds = int.Parse(Option(words, "--seeds", "3"), CultureInfo.InvariantCulture);
        Console.WriteLine($"{Length} random bytes between two pseudo-terminals; share of the line, each of {seeds} seeds; the line takes 4096 bytes ahead.");
        Console.WriteLine("Counted from the first byte that either end sends to the last that arrives, greeting and goodbye included, starting a program not.");
        Console.WriteLine($"none: not done, or not the same bytes, in {1 / LeastShare:0} times the line's own time.");
        Console.WriteLine();
        Console.WriteLine("| baud, latency one way | bit error rate | " + string.Join(" | ", Transfers.Select(transfer => transfer.Name)) + " |");
        Console.WriteLine("| --- | --- | " + string.Join(" | ", Transfers.Select(_ => "---:")) + " |");
        WarmUp();
        foreach (string baud in Option(words, "--bauds", "115200,921600").Split(','))
        {
            LineQuality clean = (baud == "921600" ? LineQuality.Usb921600 : LineQuality.Usb115200) with { TransmitBuffer = 4096 };
            foreach (string rate in Option(words, "--errors", "0,1e-5,1e-4").Split(','))
            {
                LineQuality quality = clean with { BitErrorRate = double.Parse(rate, CultureInfo.InvariantCulture) };
                Console.WriteLine($"| {quality.Baud}, {quality.Latency.TotalMilliseconds} ms | {rate} | "
                    + string.Join(" | ", Transfers.Select(transfer => Cell(transfer, quality, seeds))) + " |");
            }
        }

        return 0;
    }

    /// <summary>The two clean lines, one seed each.</summary>
    public static IEnumerable<Figure> Figures()
    {
        WarmUp();
        foreach (LineQuality line in new[] { LineQuality.Usb115200, LineQuality.Usb921600 })
        {
            LineQuality quality = line with { TransmitBuffer = 4096 };
            string[] shares = [.. Transfers.Select(transfer => Cell(transfer, quality, seeds: 1))];
            yield return new Figure(
                $"fetch at {quality.Baud} baud, share of a clean line",
                shares[0],
                "at least 96.5 %",
                string.Join(", ", Transfers.Zip(shares).Skip(1).Select(tool => $"{tool.First.Name}: {tool.Second}")));
        }
    }

    private static string Cell(ITransfer transfer, LineQuality quality, int seeds)
    {
        if (!transfer.IsThere)
        {
            return "not installed";
        }

        double ideal = Length / quality.BytesPerSecond;
        TimeSpan limit = TimeSpan.FromSeconds(ideal / LeastShare);
        TimeSpan? One(int seed)
        {
            using PacedLine line = new(quality, seed * 1000);
            return transfer.Run(line, Length, seed, limit) ? line.InUse : null;
        }

        // A slow line leaves the machine idle: its seeds run beside each other.
        IEnumerable<int> all = Enumerable.Range(1, seeds);
        TimeSpan?[] times = quality.Baud > 200_000
            ? [.. all.Select(One)]
            : [.. Task.WhenAll(all.Select(seed => Task.Factory.StartNew(() => One(seed), TaskCreationOptions.LongRunning))).Result];
        return string.Join(", ", times.Select(time => time is TimeSpan spent ? $"{ideal / spent.TotalSeconds * 100:0.0} %" : "none"));
    }

    /// <summary>What the runtime compiles at first use is not the line's.</summary>
    private static void WarmUp()
    {
        using PacedLine line = new(LineQuality.Usb921600 with { TransmitBuffer = 4096, BitErrorRate = 1e-4 }, seed: 99);
        new OwnTransfer().Run(line, 30_000, 99, TimeSpan.FromMinutes(1));
    }

    private static string Option(string[] words, string name, string otherwise)
    {
        int at = Array.IndexOf(words, name);
        return at >= 0 && at + 1 < words.Length ? words[at + 1] : otherwise;
    }
}
