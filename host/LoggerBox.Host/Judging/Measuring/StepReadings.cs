using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Validity;
using LoggerBox.Host.Sessions;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>
/// Which hold counts for each step: the last good one. Good is what no gate made void and what stood still about as long as the
/// step's others: two seconds at idle on the way to a stall don't replace a reading taken with care.
/// </summary>
public sealed class StepReadings
{
    private const double LongEnoughSeconds = 3;

    /// <summary>Nobody stops, changes direction and comes back to speed within this.</summary>
    private const double PauseSeconds = 3.5;

    /// <summary>From one speed to another and at rest there; in more than this the lever may have moved as well.</summary>
    private const double LeverRestsSeconds = 5;

    /// <summary>One clutch repeats its own pressure better than this.</summary>
    private const double AnotherClutch = 1.15;

    private readonly Dictionary<MeasuredHold, string> voids;

    // Each hold asks which of its step counts, and a day has hundreds of holds.
    private readonly Dictionary<Step, List<MeasuredHold>> goodBySteps = [];

    /// <param name="holds">In order of time.</param>
    /// <param name="stalls">The tries of a stall among them.</param>
    /// <param name="voids">Holds that a gate made void, with the gate's code.</param>
    public StepReadings(IReadOnlyList<MeasuredHold> holds, IReadOnlyList<StallRun> stalls, IReadOnlyDictionary<MeasuredHold, string> voids)
    {
        All = holds;
        Stalls = stalls;
        this.voids = new Dictionary<MeasuredHold, string>(voids, ReferenceEqualityComparer.Instance as IEqualityComparer<MeasuredHold>);
    }

    public IReadOnlyList<MeasuredHold> All { get; }

    /// <summary>Found once: the samples around each stall are read for it.</summary>
    public IReadOnlyList<StallRun> Stalls { get; }

    public MeasuredHold? Good(Step step) => AllGood(step).LastOrDefault();

    /// <summary>The last hold of the step where every one is void.</summary>
    public MeasuredHold? Void(Step step) => Good(step) is null ? All.LastOrDefault(hold => hold.Step == step) : null;

    /// <summary>Of one session: what is subtracted from each other was measured in one engine run, with one zero and one truck.</summary>
    public StepReadings Of(RecordedSession session) => new(
        All.Where(hold => hold.IsOf(session)).ToList(), Stalls.Where(run => run.IsOf(session)).ToList(), voids);

    public string? VoidCode(MeasuredHold hold) => voids.GetValueOrDefault(hold);

    /// <summary>
    /// Steps in gear without knowing which: of the last two times that a gear was put in, the last of each counts, because a session tests
    /// both directions and one lever position is one gear. Where clutch pressures come in two sorts by turns, the last of each.
    /// </summary>
    public IReadOnlyList<MeasuredHold> GoodInGear(Step step)
    {
        var parts = AllGood(step);
        var sound = All.Where(hold => hold.Step == step && !voids.ContainsKey(hold) && hold.Clutch is not null).ToList();
        if (Sorts(sound) is { } middle)
        {
            return new[] { Last(parts, sound, hold => hold.Clutch!.Value > middle), Last(parts, sound, hold => hold.Clutch!.Value <= middle) }
                .OrderBy(hold => sound.IndexOf(hold))
                .ToList();
        }

        return parts.Where((hold, i) => i == parts.Count - 1 || !(IsOneTry(hold, parts[i + 1]) || IsOneGear(hold, parts[i + 1]))).TakeLast(2).ToList();
    }

    /// <summary>The pressure between two sorts of clutch pressure that come by turns; null where there is one sort, or a drift from one to the other.</summary>
    private static double? Sorts(List<MeasuredHold> sound)
    {
        if (sound.Count < 3)
        {
            return null;
        }

        var pressures = sound.Select(hold => hold.Clutch!.Value).ToList();
        double middle = (pressures.Min() + pressures.Max()) / 2;
        int changes = Enumerable.Range(1, sound.Count - 1).Count(i => pressures[i] > middle != pressures[i - 1] > middle);
        return changes >= 2 && pressures.Max() > AnotherClutch * pressures.Min() ? middle : null;
    }

    private static MeasuredHold Last(List<MeasuredHold> parts, List<MeasuredHold> sound, Func<MeasuredHold, bool> isOfSort) =>
        parts.LastOrDefault(hold => hold.Clutch is not null && isOfSort(hold)) ?? sound.Last(isOfSort);

    private static bool IsOneTry(MeasuredHold hold, MeasuredHold next) =>
        hold.Session == next.Session && next.StartSeconds - hold.StartSeconds - hold.DurationSeconds < PauseSeconds
        && HoldGates.ClutchIsEmpty(hold) == HoldGates.ClutchIsEmpty(next);

    /// <summary>In gear all the way from the one to the other, as far as readings tell, and no clutch that began to fill: the lever stayed where it was.</summary>
    private bool IsOneGear(MeasuredHold hold, MeasuredHold next)
    {
        if (hold.Session != next.Session || HoldGates.ClutchIsEmpty(hold) || HoldGates.ClutchIsEmpty(next))
        {
            return false;
        }

        double until = hold.StartSeconds + hold.DurationSeconds;
        foreach (var between in All.Where(one => one.Session == hold.Session && one.StartSeconds > hold.StartSeconds && one.StartSeconds <= next.StartSeconds).OrderBy(one => one.StartSeconds))
        {
            if (IsOutOfGear(between) || between.StartSeconds - until > LeverRestsSeconds)
            {
                return false;
            }

            until = between.StartSeconds + between.DurationSeconds;
        }

        return !hold.Session.Engagements.Any(filling =>
            filling.StartMicroseconds > hold.Record.StartMicroseconds && filling.StartMicroseconds < next.Record.StartMicroseconds);
    }

    private static bool IsOutOfGear(MeasuredHold hold) => hold.Record.Gear == Gear.Neutral || !hold.Record.ClutchPressed;

    private List<MeasuredHold> AllGood(Step step)
    {
        if (!goodBySteps.TryGetValue(step, out List<MeasuredHold>? good))
        {
            good = FindGood(step);
            goodBySteps.Add(step, good);
        }

        return good;
    }

    private List<MeasuredHold> FindGood(Step step)
    {
        var sound = All.Where(hold => hold.Step == step && !voids.ContainsKey(hold)).ToList();
        if (sound.Exists(hold => !hold.IsClutchHoseElsewhere))
        {
            sound.RemoveAll(hold => hold.IsClutchHoseElsewhere);
        }

        double longest = sound.Count == 0 ? 0 : sound.Max(hold => hold.DurationSeconds);
        return sound.Where(hold => hold.DurationSeconds >= Math.Min(LongEnoughSeconds, longest / 2)).ToList();
    }

    public bool Counts(MeasuredHold hold) => hold.Step switch
    {
        Step.None => false,
        Step.IdleInGear or Step.HoldInGear or Step.StallInGear => GoodInGear(hold.Step).Any(good => ReferenceEquals(good, hold)),
        _ => ReferenceEquals(Good(hold.Step), hold),
    };
}
