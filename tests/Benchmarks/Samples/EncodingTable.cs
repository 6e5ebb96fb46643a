using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Runtime.InteropServices;
using LoggerBox.Benchmarks.Table;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Tests.Encoding;
using LoggerBox.TruckSimulator.Runs;

namespace LoggerBox.Benchmarks.Samples;

/// <summary>Bytes a sample set, of our blocks and of general compressors on the same values.</summary>
internal static class EncodingTable
{
    private const int Seed = 1;

    private sealed record Trace(string Name, short[] Columns, uint IntervalMicroseconds, double? Entropy);

    public static int Run(string[] words)
    {
        Print(Console.Out);
        return 0;
    }

    /// <summary>The trace that is to be had, and what is beside it.</summary>
    public static IEnumerable<Figure> Figures()
    {
        Trace trace = Generated("sigma 2", 2, 0);
        yield return new Figure(
            "encoding, bytes a sample set, sigma 2",
            Number(BlockSizes.Of(trace.Columns, trace.IntervalMicroseconds).BytesPerSet),
            $"at most 1.91; below all but flac in blocks of 4096; the noise itself has {Number(trace.Entropy!.Value)}",
            string.Join(", ", Compressor.All.Select(compressor => $"{compressor.Name}: {Size(compressor, trace)}")));
    }

    private static void Print(TextWriter output)
    {
        Trace[] traces =
        [
            Generated("sigma 1", 1, 0), Generated("sigma 2", 2, 0), Generated("sigma 3", 3, 0), Generated("sigma 2, ripple 8", 2, 8),
            new("full-scale noise", GeneratedTrace.FullScaleNoise(Seed), GeneratedTrace.IntervalMicroseconds, 8),
            Simulated("healthy"), Simulated("pump-worn"),
        ];
        BlockSizes[] sizes = [.. traces.Select(trace => BlockSizes.Of(trace.Columns, trace.IntervalMicroseconds))];
        output.WriteLine($"Bytes a set of four 16-bit values; generator seed {Seed}, {GeneratedTrace.Sets} sets; simulated jobs at 50 sets a second, seed {Seed}.");
        output.WriteLine("Blocks of 128 sets decode alone, and each was decoded and compared. The compressors get the whole file at once.");
        output.WriteLine();
        Row(output, "", traces.Select(trace => trace.Name));
        Row(output, "---", traces.Select(_ => "---:"));
        Row(output, "**block, all but the envelope**", sizes.Select(size => $"**{Number(size.BytesPerSet)}**"));
        Row(output, "whole record", sizes.Select(size => Number((size.Bytes + (size.Blocks * (double)RecordFormat.EnvelopeLength)) / size.Sets)));
        Row(output, "longest block, bytes a set", sizes.Select(size => Number(size.Longest / (double)SampleBlock.Capacity)));
        foreach (Compressor compressor in Compressor.All)
        {
            Row(output, compressor.Name, traces.Select(trace => Size(compressor, trace)));
        }

        Row(output, "entropy of the noise alone", traces.Select(trace => trace.Entropy is double entropy ? Number(entropy) : ""));
    }

    private static Trace Generated(string name, double sigma, double ripple) =>
        new(name, GeneratedTrace.Counts(sigma, ripple, Seed), GeneratedTrace.IntervalMicroseconds, GeneratedTrace.NoiseEntropy(sigma));

    private static Trace Simulated(string cause) =>
        new($"simulated, {cause}", SimulatedSessions.Columns(cause, Seed), SimulatedRun.SampleIntervalMicroseconds, null);

    private static string Size(Compressor compressor, Trace trace)
    {
        byte[] raw = MemoryMarshal.AsBytes(trace.Columns.AsSpan()).ToArray();
        return compressor.Size(raw) is long bytes ? Number(bytes / (trace.Columns.Length / (double)Channel.Count)) : "not installed";
    }

    private static string Number(double value) => value.ToString("F3", CultureInfo.InvariantCulture);

    private static void Row(TextWriter output, string name, IEnumerable<string> cells) => output.WriteLine($"| {name} | {string.Join(" | ", cells)} |");
}
