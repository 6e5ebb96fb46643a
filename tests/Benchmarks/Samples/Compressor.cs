using System;
using System.ComponentModel;
using System.Diagnostics;
using System.IO;
using System.IO.Compression;

namespace LoggerBox.Benchmarks.Samples;

/// <summary>A general compressor over the whole file of fixed 16-bit values: it need not restart at each block, ours does.</summary>
internal sealed record Compressor(string Name, Func<byte[], long?> Size)
{
    public static readonly Compressor[] All =
    [
        new("fixed 16-bit", raw => raw.Length),
        new("gzip, smallest", raw => Through(raw, into => new GZipStream(into, CompressionLevel.SmallestSize))),
        new("brotli 11", raw => Through(raw, into => new BrotliStream(into, CompressionLevel.SmallestSize))),
        Command("zstd -19", "zstd", "-q -19 -c {0}"),
        Command("xz -9e", "xz", "-9e -k -c {0}"),
        Command("flac -8ep, blocks of 128", "flac", Flac(128)),
        Command("flac -8ep, blocks of 4096", "flac", Flac(4096)),
    ];

    private static string Flac(int block) => "--silent --force-raw-format --endian=little --sign=signed --channels=4 --bps=16 --sample-rate=100 "
        + $"--lax --no-padding --no-seektable -8 -e -p --blocksize={block} --stdout {{0}}";

    private static long Through(byte[] raw, Func<Stream, Stream> compressor)
    {
        using MemoryStream packed = new();
        using (Stream stream = compressor(packed))
        {
            stream.Write(raw);
        }

        return packed.ToArray().LongLength;
    }

    private static Compressor Command(string name, string program, string arguments) => new(name, raw =>
    {
        string file = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(file, raw);
            using Process process = Process.Start(new ProcessStartInfo(program, string.Format(arguments, file)) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            process.ErrorDataReceived += (_, _) => { };
            process.BeginErrorReadLine();
            using MemoryStream packed = new();
            process.StandardOutput.BaseStream.CopyTo(packed);
            process.WaitForExit();
            return process.ExitCode == 0 ? packed.Length : throw new InvalidOperationException($"{name} ended with {process.ExitCode}.");
        }
        catch (Win32Exception)
        {
            return null;
        }
        finally
        {
            File.Delete(file);
        }
    });
}
