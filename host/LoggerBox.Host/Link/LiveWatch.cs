using System;
using System.Threading;
using LoggerBox.Protocol.Link;

namespace LoggerBox.Host.Link;

/// <summary>
/// Live readings for as long as somebody looks. The logger is asked for a few seconds at a time and asked again before they are over:
/// one that is unplugged, or whose host was killed, falls silent by itself.
/// </summary>
internal sealed class LiveWatch
{
    private const byte SecondsAtATime = 6;

    // Each request is answered by a reading at once. One that asks for less than a second is disturbed little by that every two seconds;
    // for a slower pace each reading is asked for by itself, and the logger's own second is too short for another.
    private static readonly TimeSpan LongestStream = TimeSpan.FromSeconds(1);
    private const byte SecondsOfOneReading = 1;

    private static readonly TimeSpan BeforeTheFirstReading = TimeSpan.FromMilliseconds(300);
    private static readonly TimeSpan Renewal = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan BetweenLooksAtTheStop = TimeSpan.FromMilliseconds(100);

    private readonly FrameLine line;
    private readonly TimeSpan interval;
    private readonly Action<LiveReadings> show;
    private readonly LiveReadings readings = new();
    private readonly Refusal refusal = new();

    /// <param name="interval">Between two readings; the logger gives none more often than ten times a second.</param>
    /// <param name="show">The object is filled again afterwards.</param>
    public LiveWatch(FrameLine line, TimeSpan interval, Action<LiveReadings> show)
    {
        this.line = line;
        this.show = show;
        this.interval = TimeSpan.FromMilliseconds(Math.Clamp(interval.TotalMilliseconds, 1, ushort.MaxValue));
    }

    private bool Streams => interval <= LongestStream;

    /// <param name="silence">How long to wait for a reading that is due.</param>
    /// <exception cref="UserErrorException">No reading came for too long, or the logger refused.</exception>
    public void Run(TimeSpan silence, CancellationToken stop)
    {
        long bytesBefore = line.BytesHeard;
        int framesBefore = line.FramesHeard;
        bool answered = false;
        Deadline patience = line.After(silence);
        Deadline renewal = line.After(TimeSpan.Zero);
        while (!stop.IsCancellationRequested)
        {
            if (renewal.IsOver)
            {
                line.Send(new Watch { IntervalMilliseconds = (ushort)interval.TotalMilliseconds, ForSeconds = Streams ? SecondsAtATime : SecondsOfOneReading });
                renewal = line.After(answered && Streams ? Renewal : BeforeTheFirstReading);
            }

            if (line.Next(line.After(BetweenLooksAtTheStop), out MessageCode code) && Hear(code))
            {
                answered = true;
                renewal = Streams ? renewal : line.After(interval);
                patience = line.After(Streams ? silence : silence + interval);
            }
            else if (patience.IsOver)
            {
                throw LinkErrors.Unanswered(line, MessageCode.Watch, silence, bytesBefore, framesBefore);
            }
        }

        line.Send(new Watch());
    }

    private bool Hear(MessageCode code)
    {
        if (code == MessageCode.LiveReadings && readings.TryRead(line.Content))
        {
            show(readings);
            return true;
        }

        return code == MessageCode.Refusal && refusal.TryRead(line.Content) && refusal.Request == MessageCode.Watch
            ? throw LinkErrors.Refused(line.Port, MessageCode.Watch, refusal.Reason)
            : false;
    }
}
