using System;
using System.IO;
using System.Text;
using LoggerBox.Host.Traces;

namespace LoggerBox.Host.Tests.Traces;

/// <summary>Reads text as if it stood in a file, which it does.</summary>
internal static class TraceText
{
    public static Trace Read(string text, Func<TraceSource, TraceSource>? with = null, string? pulses = null) =>
        Read(Encoding.UTF8.GetBytes(text), with, pulses);

    public static Trace Read(byte[] bytes, Func<TraceSource, TraceSource>? with = null, string? pulses = null)
    {
        using var folder = new TemporaryFolder();
        var source = new TraceSource(folder.File("t.csv"));
        File.WriteAllBytes(source.Path, bytes);
        if (pulses is not null)
        {
            source = source with { PulsesPath = folder.File("p.txt") };
            File.WriteAllText(source.PulsesPath, pulses);
        }

        return TraceReader.Read(with is null ? source : with(source));
    }
}
