using System;
using System.Collections.Generic;
using System.IO;
using LoggerBox.Capture.Link;
using LoggerBox.Link.Tests.Line;

namespace LoggerBox.Link.Tests.VirtualTime;

/// <summary>
/// The host's end of a line on virtual time. While the host waits for bytes, the logger at the other end is driven, and time goes on.
/// </summary>
internal sealed class VirtualLine : Stream
{
    // Both ends look at the line twice a millisecond: a driver's pace, and few enough looks to be quick.
    private const long Look = 500_000;

    // Of a logger that reads its card, or waits for a line that takes nothing more now.
    private const int StepsWithoutAByteInOneLook = 16;

    private readonly SentFrames sent = new();
    private readonly VirtualClock clock;
    private readonly Func<bool> logger;
    private long moved;

    /// <param name="logger">Lets the logger do one thing; false: it has nothing to do.</param>
    public VirtualLine(VirtualClock clock, LineQuality quality, int seed, Func<ISerialPort, Func<bool>> logger)
    {
        this.clock = clock;
        ToHost = new LineDirection(quality, seed);
        ToLogger = new LineDirection(quality, seed + 1);
        this.logger = logger(new LoggerEnd(this));
    }

    public LineDirection ToHost { get; }

    public LineDirection ToLogger { get; }

    /// <summary>What the logger has put on the wire.</summary>
    public IReadOnlyList<SentFrame> Frames => sent.All;

    public override bool CanTimeout => true;

    public override int ReadTimeout { get; set; }

    public override int WriteTimeout { get; set; }

    public override bool CanRead => true;

    public override bool CanWrite => true;

    public override bool CanSeek => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count)
    {
        long deadline = clock.Now + (ReadTimeout * 1_000_000L);
        do
        {
            int got = ToHost.Receive(clock.Now, buffer.AsSpan(offset, count));
            if (got > 0)
            {
                return got;
            }

            Pass();
        }
        while (clock.Now < deadline);
        throw new TimeoutException();
    }

    public override void Write(byte[] buffer, int offset, int count)
    {
        for (int sent = 0; sent < count;)
        {
            sent += ToLogger.Send(clock.Now, buffer.AsSpan(offset + sent, count - sent));
            if (sent < count)
            {
                Pass();
            }
        }
    }

    /// <summary>So long nobody is at the host's end.</summary>
    public void PassUntil(long time)
    {
        while (clock.Now < time)
        {
            Pass();
            ToHost.Receive(clock.Now, new byte[4096]);
        }
    }

    public override void Flush()
    {
        // Nothing is kept back here.
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    private void Pass()
    {
        clock.Now += Look;
        int idle = 0;
        while (idle < StepsWithoutAByteInOneLook)
        {
            long before = moved;
            if (!logger())
            {
                return;
            }

            idle = moved == before ? idle + 1 : 0;
        }
    }

    private sealed class LoggerEnd(VirtualLine line) : ISerialPort
    {
        public int Read(byte[] buffer, int offset, int count) => Moved(line.ToLogger.Receive(line.clock.Now, buffer.AsSpan(offset, count)));

        public int Write(byte[] buffer, int offset, int count)
        {
            int taken = Moved(line.ToHost.Send(line.clock.Now, buffer.AsSpan(offset, count)));
            line.sent.Hear(buffer.AsSpan(offset, taken));
            return taken;
        }

        private int Moved(int count)
        {
            line.moved += count;
            return count;
        }
    }
}
