using System;
using System.Diagnostics;
using System.IO;
using System.Linq;

namespace LoggerBox.Benchmarks.Line;

/// <summary>Two programs of this system, each with its standard input and output on one end of the line.</summary>
internal sealed class ToolTransfer : ITransfer
{
    private readonly string program;
    private readonly Func<string, int, string> send;
    private readonly Func<string, int, string> receive;

    private ToolTransfer(string name, string program, Func<string, int, string> send, Func<string, int, string> receive)
    {
        Name = name;
        this.program = program;
        this.send = send;
        this.receive = receive;
    }

    public static ToolTransfer Zmodem { get; } = new(
        "ZMODEM (lrzsz)", "sz", (port, _) => $"exec sz --binary --quiet sent < {port} > {port}", (port, _) => $"exec rz --binary --overwrite --quiet < {port} > {port}");

    public static ToolTransfer Kermit { get; } = new("C-Kermit", "kermit", (port, baud) => KermitLine(port, baud, "send ../sender/sent"), (port, baud) => KermitLine(port, baud, "receive"));

    public string Name { get; }

    public bool IsThere => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':').Any(folder => File.Exists(Path.Combine(folder, program)));

    public TimeSpan? Run(PacedLine line, int length, int seed, TimeSpan limit)
    {
        string folder = Directory.CreateTempSubdirectory("loggerbox-line-").FullName;
        byte[] bytes = new byte[length];
        new Random(seed).NextBytes(bytes);
        string source = Directory.CreateDirectory(Path.Combine(folder, "sender")).FullName;
        string target = Directory.CreateDirectory(Path.Combine(folder, "receiver")).FullName;
        File.WriteAllBytes(Path.Combine(source, "sent"), bytes);
        Stopwatch clock = Stopwatch.StartNew();
        using Process receiver = Start(receive(line.ReceiverPort, line.Quality.Baud), target);
        using Process sender = Start(send(line.SenderPort, line.Quality.Baud), source);
        try
        {
            bool ended = sender.WaitForExit(limit) && receiver.WaitForExit(limit - clock.Elapsed is { Ticks: > 0 } left ? left : TimeSpan.Zero);
            TimeSpan spent = clock.Elapsed;
            string arrived = Path.Combine(target, "sent");
            return ended && File.Exists(arrived) && File.ReadAllBytes(arrived).AsSpan().SequenceEqual(bytes) ? spent : null;
        }
        finally
        {
            End(sender);
            End(receiver);
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Its fastest settings that the manual recommends for a clean line without hardware flow control.</summary>
    private static string KermitLine(string port, int baud, string action) =>
        $"exec kermit -Y -Q -l {port} -b {baud} -C 'set carrier-watch off,set flow-control none,set file type binary,set file names literal,"
        + $"set receive packet-length 4000,set send packet-length 4000,set window 16,set prefixing minimal,set transfer display none,set file collision overwrite,{action},exit' > /dev/null 2>&1";

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
