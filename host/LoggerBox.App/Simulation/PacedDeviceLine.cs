using System;
using System.Diagnostics;
using System.Threading;
using LoggerBox.Host.Link;

namespace LoggerBox.App.Simulation;

/// <summary>A line that carries what it is given no faster than a serial cable would: a start bit, eight bits and a stop bit for each byte.</summary>
internal sealed class PacedDeviceLine : IDeviceLine
{
    private const int BitsInAByte = 10;

    // What the sender may catch up with after the system kept it from running.
    private static readonly TimeSpan Longest = TimeSpan.FromMilliseconds(20);

    private readonly IDeviceLine line;
    private readonly double bytesPerSecond;
    private readonly Stopwatch clock = Stopwatch.StartNew();
    private TimeSpan free;

    public PacedDeviceLine(IDeviceLine line, int baud)
    {
        this.line = line;
        bytesPerSecond = (double)baud / BitsInAByte;
    }

    public string PortName => line.PortName;

    public int Read(byte[] buffer, int offset, int count, int milliseconds) => line.Read(buffer, offset, count, milliseconds);

    public int Write(byte[] buffer, int offset, int count)
    {
        TimeSpan now = clock.Elapsed;
        free = free < now - Longest ? now - Longest : free;
        int due = (int)Math.Min(count, (now - free).TotalSeconds * bytesPerSecond);
        if (due <= 0)
        {
            Thread.Sleep(1);
            return 0;
        }

        int taken = line.Write(buffer, offset, due);
        free += TimeSpan.FromSeconds(taken / bytesPerSecond);
        return taken;
    }

    public void Dispose() => line.Dispose();
}
