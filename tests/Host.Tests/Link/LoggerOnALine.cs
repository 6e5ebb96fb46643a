using System;
using System.Diagnostics;
using System.Threading;
using LoggerBox.Capture.Link;
using LoggerBox.Capture.Storage;
using LoggerBox.Host.Link;
using LoggerBox.Host.Tests.Sessions;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Tests.Link;

/// <summary>The logger's real log and link on a real line, in a thread of its own.</summary>
internal sealed class LoggerOnALine : IDisposable
{
    private readonly IDeviceLine line;
    private readonly Thread thread;
    private volatile bool stopped;

    public LoggerOnALine(IDeviceLine line, RecordLog log, Action<DevicePort>? faults = null)
    {
        this.line = line;
        DevicePort port = new(line);
        faults?.Invoke(port);
        Answers = new LinkAnswers(log, port, RecordedBytes.LoggerId, RecordedBytes.BootCount);
        thread = new Thread(() =>
        {
            Stopwatch clock = Stopwatch.StartNew();
            while (!stopped)
            {
                port.MillisecondsToWait = Answers.Step((long)clock.Elapsed.TotalMicroseconds, 0) ? 0 : 5;
            }
        });
        thread.Start();
    }

    public LinkAnswers Answers { get; }

    public string Port => line.PortName;

    /// <summary>A log with one ended session for each seed.</summary>
    public static RecordLog Log(int sampleSets, params int[] seeds)
    {
        RecordLog log = new(new MemoryStore(4 * 1024 * 1024));
        log.Open();
        foreach (int seed in seeds)
        {
            log.BeginSession(RecordedBytes.Header(0));
            RecordedBytes.WriteSamples(record => log.Append(record), new Random(seed), sampleSets);
            log.EndSession(new SessionEnd { Microseconds = 9_000_000, Reason = SessionEndReason.Button, SampleSets = (uint)sampleSets });
        }

        return log;
    }

    /// <summary>The bytes of a session as the log holds them.</summary>
    public static byte[] BytesOf(RecordLog log, int index)
    {
        byte[] bytes = new byte[log.Sessions[index].Length];
        log.Read(log.Sessions[index], 0, bytes, 0, bytes.Length);
        return bytes;
    }

    public void Dispose()
    {
        stopped = true;
        thread.Join();
        line.Dispose();
    }
}
