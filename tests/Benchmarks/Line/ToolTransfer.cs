using System;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Threading;
using LoggerBox.Link.Tests.Line;

namespace LoggerBox.Benchmarks.Line;

/// <summary>Two programs of this system, each with its standard input and output on one end of the line.</summary>
internal sealed class ToolTransfer : ITransfer
{
    private static readonly TimeSpan KermitStart = TimeSpan.FromMilliseconds(500);

    private readonly string program;
    private readonly Func<string, LineQuality, string> send;
    private readonly Func<string, LineQuality, string> receive;

    private ToolTransfer(string name, string program, Func<string, LineQuality, string> send, Func<string, LineQuality, string> receive)
    {
        Name = name;
        this.program = program;
        this.send = send;
        this.receive = receive;
    }

    /// <summary>
    /// sz says goodbye, waits until that is sent, and flushes. A pseudo-terminal knows no such wait: the goodbye is thrown away, and rz
    /// waits half a minute for it. So it is said once more.
    /// </summary>
    public static ToolTransfer Zmodem { get; } = new(
        "ZMODEM (lrzsz)",
        "sz",
        (port, line) => $"sz {ZmodemSettings(line)} --binary --quiet sent < {port} > {port}; printf OO > {port}",
        (port, _) => $"exec rz --timeout 10 --binary --overwrite --quiet < {port} > {port}");

    public static ToolTransfer Kermit { get; } = new(
        "C-Kermit", "kermit", (port, line) => KermitLine(port, line, "send ../sender/sent"), (port, line) => KermitLine(port, line, "receive"));

    public string Name { get; }

    public bool IsThere => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':').Any(folder => File.Exists(Path.Combine(folder, program)));

    public bool Run(PacedLine line, int length, int seed, TimeSpan limit)
    {
        string folder = Directory.CreateTempSubdirectory("loggerbox-line-").FullName;
        byte[] bytes = new byte[length];
        new Random(seed).NextBytes(bytes);
        string source = Directory.CreateDirectory(Path.Combine(folder, "sender")).FullName;
        string target = Directory.CreateDirectory(Path.Combine(folder, "receiver")).FullName;
        File.WriteAllBytes(Path.Combine(source, "sent"), bytes);
        using Process receiver = Start(receive(line.ReceiverPort, line.Quality), target);

        // Kermit flushes what came before it was ready, the first packet too, and sends that again only seconds later.
        Thread.Sleep(this == Kermit ? KermitStart : TimeSpan.Zero);
        Stopwatch clock = Stopwatch.StartNew();
        using Process sender = Start(send(line.SenderPort, line.Quality), source);
        try
        {
            bool ended = sender.WaitForExit(limit) && receiver.WaitForExit(limit - clock.Elapsed is { Ticks: > 0 } left ? left : TimeSpan.Zero);
            string arrived = Path.Combine(target, "sent");
            return ended && File.Exists(arrived) && File.ReadAllBytes(arrived).AsSpan().SequenceEqual(bytes);
        }
        finally
        {
            End(sender);
            End(receiver);
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>
    /// The best of those that were tried for each kind of line: on a clean one it streams; on a bad one a window bounds what is sent
    /// again, and a second is the shortest wait there is.
    /// </summary>
    private static string ZmodemSettings(LineQuality line) => line.BitErrorRate > 0 ? "--timeout 10 --windowsize 2048 --packetlen 256" : "--timeout 10";

    /// <summary>
    /// Likewise. Empty strings for the call to a receiver that is not started yet: it is, and the pause after the call would count.
    /// </summary>
    private static string KermitLine(string port, LineQuality line, string action)
    {
        string packets = line.BitErrorRate > 0
            ? "set receive packet-length 1000,set send packet-length 1000,set window 30,set send timeout 1 fixed,set receive timeout 1"
            : "set receive packet-length 4000,set send packet-length 4000,set window 16";
        return $"exec kermit -Y -Q -l {port} -b {line.Baud} -C 'set carrier-watch off,set flow-control none,set file type binary,set file names literal,"
            + $"{packets},set prefixing minimal,set protocol kermit {{}} {{}},set transfer display none,set file collision overwrite,{action},exit' > /dev/null 2>&1";
    }

    private static Process Start(string command, string folder) =>
        Process.Start(new ProcessStartInfo("sh", ["-c", command]) { WorkingDirectory = folder, RedirectStandardError = true, RedirectStandardInput = true })!;

    private static void End(Process process)
    {
        if (!process.HasExited)
        {
            process.Kill(entireProcessTree: true);
            process.WaitForExit();
        }
    }
}
