using System;
using System.Diagnostics;
using System.Threading;
using LoggerBox.Host.Link;
using LoggerBox.Link.Tests.Line;

namespace LoggerBox.Benchmarks.Line;

/// <summary>Two pseudo-terminals with a line of the model between them, in real time.</summary>
internal sealed class PacedLine : IDisposable
{
    private const uint MicrosecondsBetweenLooks = 200;

    private readonly PseudoTerminal sender = PseudoTerminal.Open();
    private readonly PseudoTerminal receiver = PseudoTerminal.Open();
    // Kept open: a cable does not hang up when one of the programs ends.
    private readonly TerminalFile senderSocket;
    private readonly TerminalFile receiverSocket;
    private readonly LineDirection forth;
    private readonly LineDirection back;
    private readonly Thread pump;
    private readonly Stopwatch clock = Stopwatch.StartNew();
    private long firstSent = -1;
    private long lastArrived = -1;
    private volatile bool stopped;

    public PacedLine(LineQuality quality, int seed)
    {
        Quality = quality;
        senderSocket = new TerminalFile(sender.PortName);
        receiverSocket = new TerminalFile(receiver.PortName);
        forth = new LineDirection(quality, seed);
        back = new LineDirection(quality, seed + 1);
        pump = new Thread(Pump);
        pump.Start();
    }

    public LineQuality Quality { get; }

    /// <summary>
    /// From the first byte that either end put on the line to the last that arrived: how long the line was in use. What the programs
    /// do before and after, such as starting, is their own.
    /// </summary>
    public TimeSpan InUse => TimeSpan.FromTicks(Math.Max(0, Interlocked.Read(ref lastArrived) - Interlocked.Read(ref firstSent)) / TimeSpan.NanosecondsPerTick);

    public string SenderPort => sender.PortName;

    public string ReceiverPort => receiver.PortName;

    public void Dispose()
    {
        stopped = true;
        pump.Join();
        senderSocket.Dispose();
        receiverSocket.Dispose();
        sender.Dispose();
        receiver.Dispose();
    }

    private void Pump()
    {
        Relay there = new(sender, receiver, forth);
        Relay home = new(receiver, sender, back);
        while (!stopped)
        {
            long now = clock.ElapsedTicks * (1_000_000_000 / Stopwatch.Frequency);
            Note(now, there.Send(now) + home.Send(now), there.Deliver(now) + home.Deliver(now));
            _ = TerminalFile.usleep(MicrosecondsBetweenLooks);
        }
    }

    private void Note(long now, int sent, int arrived)
    {
        if (sent > 0 && firstSent < 0)
        {
            Interlocked.Exchange(ref firstSent, now);
        }

        if (arrived > 0)
        {
            Interlocked.Exchange(ref lastArrived, now);
        }
    }

    private sealed class Relay(PseudoTerminal from, PseudoTerminal to, LineDirection line)
    {
        private readonly byte[] taken = new byte[4096];
        private readonly byte[] arrived = new byte[4096];
        private int first;
        private int end;

        public int Send(long now)
        {
            int room = Math.Min(taken.Length, line.Room(now));
            return room > 0 ? line.Send(now, taken.AsSpan(0, from.Read(taken, 0, room, 0))) : 0;
        }

        public int Deliver(long now)
        {
            if (first == end)
            {
                first = 0;
                end = line.Receive(now, arrived);
            }

            int written = first < end ? to.Write(arrived, first, end - first) : 0;
            first += written;
            return written;
        }
    }
}
