using System;
using LoggerBox.Protocol.Link;

namespace LoggerBox.Host.Link;

/// <summary>A logger's clock beside this computer's, at the moment of its greeting.</summary>
public sealed class LoggerClock
{
    // The greeting tells whole seconds, and takes a part of one to come.
    private static readonly TimeSpan Tolerance = TimeSpan.FromSeconds(3);

    // Before this program was made: the computer's own clock was lost.
    private static readonly DateTimeOffset Earliest = new(2026, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private readonly bool isKnown;
    private readonly TimeSpan ahead;

    /// <param name="now">This computer's time.</param>
    public LoggerClock(HelloAnswer greeting, DateTimeOffset now)
    {
        isKnown = greeting.UtcSeconds != 0;
        ahead = DateTimeOffset.FromUnixTimeSeconds(greeting.UtcSeconds) - now;
        IsRight = now < Earliest || (isKnown && ahead.Duration() <= Tolerance);
    }

    /// <summary>It is not to be set: it agrees with this computer's, or this computer's is the wrong one.</summary>
    public bool IsRight { get; }

    /// <summary>After "the clock": "was never set", "was 90 s behind".</summary>
    public string WhatIsWrong => !isKnown ? "was not set" : FormattableString.Invariant($"was {Size(ahead.Duration())} {(ahead > TimeSpan.Zero ? "ahead" : "behind")}");

    private static string Size(TimeSpan off) =>
        off.TotalMinutes < 2 ? FormattableString.Invariant($"{off.TotalSeconds:0} s")
        : off.TotalHours < 2 ? FormattableString.Invariant($"{off.TotalMinutes:0} min")
        : off.TotalDays < 2 ? FormattableString.Invariant($"{off.TotalHours:0} h")
        : FormattableString.Invariant($"{off.TotalDays:0} days");
}
