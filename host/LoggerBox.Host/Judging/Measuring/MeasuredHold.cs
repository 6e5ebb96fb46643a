using System.Collections.Generic;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>A hold in physical units, the engine-off reading subtracted. A reading is null where its channel gave none.</summary>
public sealed record MeasuredHold(
    RecordedSession Session,
    HoldRecord Record,
    Step Step,
    Measured? Rpm,
    Measured? Main,
    Measured? Clutch,
    Measured? Converter)
{
    public const double RunningRpm = 300;

    private static readonly ZeroReading?[] NoZeros = new ZeroReading?[Channel.Count];

    /// <summary>By channel, what was subtracted: found once a session.</summary>
    public IReadOnlyList<ZeroReading?> Zeros { get; init; } = NoZeros;

    public Gear Gear => Record.Gear;

    /// <summary>The clutch hose was on the other gear's port.</summary>
    public bool IsClutchHoseElsewhere { get; init; }

    /// <summary>Channels, a bit each, whose transducer stood at the end of its range: there is a pressure, but nobody knows which.</summary>
    public int Saturated { get; init; }

    public bool IsSaturated(int channel) => (Saturated >> channel & 1) != 0;

    public double StartSeconds => Session.SecondsAt(Record.StartMicroseconds);

    public double DurationSeconds => Record.DurationMilliseconds / 1000.0;

    /// <summary>It was held in this session, which may stand here with something changed in it: its header is the same.</summary>
    public bool IsOf(RecordedSession session) => ReferenceEquals(Session.Header, session.Header);

    /// <summary>Turned by its starter, or about to die: no pump gives what a limit means. No engine idles so low; common practice, no source.</summary>
    public bool IsCranked => Rpm is { } rpm && IsCranking(rpm.Value);

    /// <summary>The hold with no more than what tells of the truck where the engine did not run: its speed.</summary>
    public MeasuredHold OfRunningEngine => IsCranked ? this with { Main = null, Clutch = null, Converter = null } : this;

    /// <summary>Of a speed in rpm; 0 is a stopped engine, or a speed that nobody recorded.</summary>
    public static bool IsCranking(double rpm) => rpm is > 0 and < RunningRpm;

    public Measured? Of(int channel) => channel switch
    {
        Channel.Speed => Rpm,
        Channel.Main => Main,
        Channel.Clutch => Clutch,
        Channel.Converter => Converter,
        _ => null,
    };
}
