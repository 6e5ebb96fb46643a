using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Checking;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>Why a pressure is missing: a wire that is broken, a loop that is shorted, a transducer at the end of its range.</summary>
public static class LoopNotes
{
    public static IEnumerable<ValidityNote> Of(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        LoopFault[] faults = [.. evidence.Sessions.SelectMany(LoopFault.Of)];
        foreach (var same in faults.GroupBy(fault => (fault.Channel, fault.State)))
        {
            Step[] steps = [.. evidence.Steps.All.Where(hold => hold.Step != Step.None && same.Any(fault => IsAt(fault, hold))).Select(hold => hold.Step).Distinct()];
            string channel = Words.ChannelName(same.Key.Channel);
            if (same.Key.State != LoopState.Saturated)
            {
                LoopFault first = same.First();
                double seconds = first.Session.SecondsAt(first.FromMicroseconds);
                yield return same.Key.State == LoopState.Open
                    ? new ValidityNote("loop-open", ValidityEffect.Note, Step.None, Sentences.LoopOpen(channel, seconds, steps))
                    : new ValidityNote("loop-shorted", ValidityEffect.Note, Step.None, Sentences.LoopShorted(channel, seconds, steps));
                continue;
            }

            foreach (Step step in steps.Where(step => IsWanted(evidence, step, same.Key.Channel)))
            {
                yield return new ValidityNote("loop-out-of-range", ValidityEffect.Void, step, Sentences.LoopOutOfRange(channel, step));
            }
        }
    }

    // At full pedal few sheets judge pressures: what nobody asks for need not be repeated.
    private static bool IsWanted(Evidence evidence, Step step, int channel) =>
        step is not (Step.Governed or Step.Relief) && !HoldGates.IsStall(step)
        || StepLimits.Pressure(evidence.Sheet, step, channel, evidence.Steps.Good(step)?.Rpm?.Value) is { IsJudged: true };

    private static bool IsAt(LoopFault fault, MeasuredHold hold) =>
        fault.Touches(hold) && (fault.State != LoopState.Saturated || hold.IsSaturated(fault.Channel));
}
