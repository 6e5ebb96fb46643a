using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>A time in which a channel's loop told of no pressure, as the logger recorded it.</summary>
public sealed record LoopFault(RecordedSession Session, int Channel, LoopState State, long FromMicroseconds, long ToMicroseconds)
{
    /// <summary>A reading of which more than this part of the time is missing at its end of the range is no mean of the rest.</summary>
    private const double TooMuch = 0.2;

    public static IReadOnlyList<LoopFault> Of(RecordedSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var faults = new List<LoopFault>();
        foreach (IGrouping<int, EventRecord> channel in session.Events.Where(one => one.Kind == EventKind.LoopState).OrderBy(one => one.Microseconds).GroupBy(one => one.Value / 256))
        {
            EventRecord[] states = [.. channel];
            for (int i = 0; i < states.Length; i++)
            {
                if ((LoopState)(states[i].Value % 256) is LoopState.Open or LoopState.Shorted or LoopState.Saturated)
                {
                    long to = i + 1 < states.Length ? states[i + 1].Microseconds : long.MaxValue;
                    faults.Add(new LoopFault(session, channel.Key, (LoopState)(states[i].Value % 256), states[i].Microseconds, to));
                }
            }
        }

        return faults;
    }

    public bool Touches(MeasuredHold hold)
    {
        ArgumentNullException.ThrowIfNull(hold);
        return hold.IsOf(Session) && Shared(hold) > 0;
    }

    /// <summary>The hold without the readings that stood at the end of their transducer's range.</summary>
    public static MeasuredHold Seen(MeasuredHold hold, IReadOnlyList<LoopFault> faults)
    {
        ArgumentNullException.ThrowIfNull(hold);
        int clipped = 0;
        foreach (LoopFault fault in faults.Where(fault => fault.State == LoopState.Saturated && fault.Touches(hold)))
        {
            clipped |= hold.Of(fault.Channel) is null || fault.Shared(hold) > TooMuch * hold.Record.DurationMilliseconds * 1000 ? 1 << fault.Channel : 0;
        }

        return clipped == 0 ? hold : hold with
        {
            Saturated = clipped,
            Main = Without(hold.Main, clipped, Protocol.Records.Channel.Main),
            Clutch = Without(hold.Clutch, clipped, Protocol.Records.Channel.Clutch),
            Converter = Without(hold.Converter, clipped, Protocol.Records.Channel.Converter),
        };
    }

    private static Measured? Without(Measured? reading, int clipped, int channel) => (clipped >> channel & 1) == 0 ? reading : null;

    private long Shared(MeasuredHold hold)
    {
        long from = hold.Record.StartMicroseconds;
        return Math.Min(ToMicroseconds, from + (hold.Record.DurationMilliseconds * 1000L)) - Math.Max(FromMicroseconds, from);
    }
}
