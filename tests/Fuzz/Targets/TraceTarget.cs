using System;
using System.Linq;
using System.Text;
using LoggerBox.Fuzz.Mutations;
using LoggerBox.Host.Traces;

namespace LoggerBox.Fuzz.Targets;

/// <summary>A trace file with pieces changed, or noise: read to columns that agree with each other, or refused.</summary>
internal sealed class TraceTarget : FuzzTarget
{
    private static readonly byte[] Sound = Encoding.UTF8.GetBytes(
        "time_s,rpm,main_mA,clutch_bar,converter_kPa,gear,step,oil_C,note\n"
        + string.Concat(Enumerable.Range(0, 12).Select(i => FormattableString.Invariant($"{i * 0.02:F3},{700 + i}.5,{4 + i},1.25,{i * 10},N,idle-N,80.1,\"a, b\"\n"))));

    private static readonly string[] Pieces =
    [
        "\"", ",", "\n", "\r", "#", "NaN", "1e309", "-", ".", "\uFEFF", "\0", "main_", "time_s", "99999999999999999999999", "=cmd()", "9223372036854775807", "1e-400", ",,,,,,,,", "\r\r\n", "F", "R",
        "stall-F", "psi", "bar", "mA", "rpm", "0000000000000000000000000000.1", "∞",
    ];

    private readonly ScratchFolder folder = new();

    public override string? Try(Random random)
    {
        byte[] bytes = random.Next(8) == 0 ? ByteMutation.Noise(random, 300) : TextMutation.Of(Sound, Pieces, random);
        string path = folder.File("fuzz.csv", bytes);
        TraceSource source = new(path, RangeMain: random.Next(2) == 0 ? ChannelRange.Parse("0..500psi") : null);
        Trace trace = TraceReader.Read(random.Next(3) == 0 ? source with { PulsesPath = path, PulsesPerRevolution = 0.5 } : source);
        TraceCounts counts = TraceCounts.From(trace);
        return trace.Count == 0 ? "a trace without rows"
            : Array.Exists(counts.PressureCounts, column => column.Length != trace.Count) ? "columns of other lengths"
            : trace.Microseconds.Zip(trace.Microseconds.Skip(1)).Any(pair => pair.First >= pair.Second) ? "time does not go on"
            : null;
    }

    protected override void Dispose(bool disposing)
    {
        folder.Dispose();
        base.Dispose(disposing);
    }
}
