using System;
using System.Numerics;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Live;

/// <summary>
/// Which of the logger's names for steps will stay. It names the fastest steady speed out of gear so far "full pedal", and names it again once the
/// engine was faster: an engine that is warmed up at 1300 rpm is no full pedal, and must be shown neither as done nor as low.
/// </summary>
public sealed class LiveNames
{
    // Nobody holds the pedal for the hold speed so badly (common practice, no source): what is faster was the pedal to the floor.
    private const double AboveHold = 1.08;
    private const double UsualHoldRpm = 2000;

    // Each of them was faster than a warm-up: a name that they left as it was is right.
    private const uint Settling = (1u << (int)Step.HoldNeutral) | (1u << (int)Step.StallForward) | (1u << (int)Step.StallReverse) | (1u << (int)Step.StallInGear);

    private long moment;
    private double fastest;
    private uint captured;

    /// <summary>The step that was captured last; none before the first, and where it was one that was captured before.</summary>
    public Step Newest { get; private set; }

    /// <summary>Takes each reading in its turn; one of a new session begins anew.</summary>
    public void Take(LiveReadings readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        if (!readings.Sampling || readings.Microseconds < moment)
        {
            (fastest, captured, Newest) = (0, 0, Step.None);
        }

        moment = readings.Microseconds;
        if (readings.Step == Step.Governed && readings.Speed != SampleSet.Missing)
        {
            fastest = Math.Max(fastest, readings.Speed / 10.0);
        }

        uint fresh = readings.StepsCaptured & ~captured;
        Newest = fresh == 0 ? Newest : (Step)BitOperations.Log2(fresh);
        captured = readings.StepsCaptured;
    }

    /// <param name="holdRpm">Of the sheet; null: there is none.</param>
    public bool IsSure(Step step, double? holdRpm) =>
        step is not (Step.Governed or Step.Relief) || (captured & Settling) != 0 || fastest > AboveHold * (holdRpm ?? UsualHoldRpm);
}
