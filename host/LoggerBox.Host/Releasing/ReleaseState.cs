using System;
using System.Collections.Generic;
using System.Linq;

namespace LoggerBox.Host.Releasing;

/// <param name="Tick">Null: the gate is open.</param>
public sealed record GateState(Gate Gate, GateTick? Tick);

/// <summary>What a job's ticks come to: which gates are open, and whether the truck may go back to work.</summary>
/// <param name="Release">Who released the truck; null: nobody, or it was taken back.</param>
public sealed record ReleaseState(IReadOnlyList<GateState> Gates, GateTick? Release)
{
    public bool IsReleased => Release is not null;

    public IReadOnlyList<Gate> Open(GateStage stage) => [.. Gates.Where(state => state.Tick is null && state.Gate.Stage == stage).Select(state => state.Gate)];

    /// <param name="ticks">In the order in which they were made.</param>
    /// <param name="isClosed">A job that is open is never released.</param>
    public static ReleaseState Of(IEnumerable<GateTick> ticks, bool isClosed)
    {
        ArgumentNullException.ThrowIfNull(ticks);
        Dictionary<string, GateTick> standing = [];
        GateTick? release = null;
        foreach (GateTick tick in ticks)
        {
            if (tick.Withdrawn)
            {
                standing.Remove(tick.Gate);

                // Who takes back what the release rests on takes back the release.
                release = tick.Gate == Gate.ReleaseCode || Gate.Find(tick.Gate)?.Stage == GateStage.Closing ? null : release;
            }
            else if (tick.Gate == Gate.ReleaseCode)
            {
                release = IsComplete(standing) ? tick : null;
            }
            else
            {
                standing[tick.Gate] = tick;
            }
        }

        return new ReleaseState([.. Gate.All.Select(gate => new GateState(gate, standing.GetValueOrDefault(gate.Code)))], isClosed ? release : null);
    }

    private static bool IsComplete(Dictionary<string, GateTick> standing) =>
        Gate.All.Where(gate => gate.Stage == GateStage.Closing).All(gate => standing.ContainsKey(gate.Code));
}
