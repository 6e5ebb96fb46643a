using System;
using System.Linq;
using LoggerBox.Host.Live;

namespace LoggerBox.App.Watching;

/// <summary>When to show again: figures now and then, a word that changes at once.</summary>
internal sealed class Pace(TimeSpan between, TimeProvider clock)
{
    private LiveMoment? shown;
    private long since;

    public bool IsDue(LiveMoment moment)
    {
        if (shown is not null && clock.GetElapsedTime(since) < between && HasSameWords(shown, moment))
        {
            return false;
        }

        shown = moment;
        since = clock.GetTimestamp();
        return true;
    }

    private static bool HasSameWords(LiveMoment one, LiveMoment other) =>
        one.Recording == other.Recording
        && one.Gear == other.Gear
        && one.Step == other.Step
        && one.Cue == other.Cue
        && one.StallSecondsLeft is null == other.StallSecondsLeft is null
        && one.CooldownSecondsLeft is null == other.CooldownSecondsLeft is null
        && one.Captured.SequenceEqual(other.Captured);
}
