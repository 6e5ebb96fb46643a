using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Checking;

/// <summary>Every limit that the sheet gives, against the reading that counts. Pressures in the sheet's unit.</summary>
public static class CheckList
{
    private static readonly (int Channel, string Quantity)[] Pressures =
        [(Channel.Main, "main"), (Channel.Clutch, "clutch"), (Channel.Converter, "converter")];

    public static IReadOnlyList<Check> Of(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var checks = new List<Check>();
        checks.AddRange(Speeds(evidence));
        foreach (var step in StepLimits.PressureSteps)
        {
            checks.AddRange(PressuresOf(evidence, step));
        }

        foreach (var step in StepLimits.InGearSteps)
        {
            foreach (var hold in evidence.Steps.GoodInGear(step))
            {
                checks.AddRange(PressuresOf(evidence, step, hold, isVoid: false));
            }

            if (evidence.Steps.Void(step) is { } spoiled)
            {
                checks.AddRange(PressuresOf(evidence, step, spoiled, isVoid: true));
            }
        }

        checks.AddRange(Engagements(evidence));
        checks.AddRange(ClutchDifference(evidence));
        return checks;
    }

    private static IEnumerable<Check> Speeds(Evidence evidence)
    {
        var engine = evidence.Engine;
        if (engine.IdleRpm is { IsJudged: true } idle)
        {
            yield return Speed(evidence, Step.IdleNeutral, idle);
        }

        if (engine.GovernedRpm is { IsJudged: true } governed)
        {
            yield return Speed(evidence, Step.Governed, governed);
        }

        if (engine.ReliefDropRpm is { IsJudged: true } drop)
        {
            yield return LimitCheck.Of(StepCodes.Text(Step.Governed), "rpm-drop", evidence.ReliefDrop, "rpm", drop);
        }

        if (engine.RunUpSeconds is { IsJudged: true } runUp)
        {
            yield return LimitCheck.Of(StepCodes.Text(Step.Governed), "run-up-time", evidence.RunUp, "s", runUp);
        }

        var unknown = evidence.Steps.GoodInGear(Step.StallInGear);
        foreach (var hold in unknown.Where(_ => Limit.SameBounds(engine.StallForwardRpm, engine.StallReverseRpm)))
        {
            if (engine.StallForwardRpm is { IsJudged: true } stall)
            {
                yield return LimitCheck.Of(StepCodes.Text(hold.Step), "rpm", hold.Rpm, "rpm", stall);
            }
        }

        if (engine.StallForwardRpm is { IsJudged: true } forward && unknown.Count == 0)
        {
            yield return Speed(evidence, Step.StallForward, forward);
        }

        if (engine.StallReverseRpm is { IsJudged: true } reverse && unknown.Count == 0 && evidence.Sheet.StallReverseAllowed)
        {
            yield return Speed(evidence, Step.StallReverse, reverse);
        }
    }

    private static Check Speed(Evidence evidence, Step step, Limit limit)
    {
        var spoiled = evidence.Steps.Void(step);
        var hold = evidence.Steps.Good(step) ?? spoiled;
        return LimitCheck.Of(StepCodes.Text(step), "rpm", hold?.Rpm, "rpm", limit, spoiled is not null);
    }

    private static IEnumerable<Check> PressuresOf(Evidence evidence, Step step)
    {
        var spoiled = evidence.Steps.Void(step);
        var hold = evidence.Steps.Good(step) ?? spoiled;
        bool gearsUnknown = hold is null && InGearTwin(step) is { } twin && evidence.Steps.All.Any(other => other.Step == twin);
        return gearsUnknown ? [] : PressuresOf(evidence, step, hold, spoiled is not null);
    }

    private static IEnumerable<Check> PressuresOf(Evidence evidence, Step step, MeasuredHold? hold, bool isVoid)
    {
        foreach (var (channel, quantity) in Pressures)
        {
            var limit = StepLimits.Pressure(evidence.Sheet, step, channel, hold?.Rpm?.Value);
            if (limit is { IsJudged: true })
            {
                yield return LimitCheck.Of(
                    StepCodes.Text(step), quantity, evidence.InSheetUnit(hold?.Of(channel)), evidence.Sheet.Unit.Code(), limit, isVoid || hold is { IsCranked: true } || hold?.IsSaturated(channel) == true);
            }
        }
    }

    private static Step? InGearTwin(Step step) => step switch
    {
        Step.IdleForward or Step.IdleReverse => Step.IdleInGear,
        Step.HoldForward or Step.HoldReverse => Step.HoldInGear,
        Step.StallForward or Step.StallReverse => Step.StallInGear,
        _ => null,
    };

    private static IEnumerable<Check> Engagements(Evidence evidence)
    {
        if (evidence.Sheet.EngagementSeconds is not { IsJudged: true } limit)
        {
            yield break;
        }

        if (EngagementReadings.GearsUnknown(evidence.Sessions))
        {
            yield return LimitCheck.Of("engage", "engagement-time", EngagementReadings.LongestTwo(evidence.Sessions, limit.Max).Longest, "s", limit);
        }
        else
        {
            yield return LimitCheck.Of("engage-F", "engagement-time", EngagementReadings.Seconds(evidence.Sessions, Gear.Forward, limit.Max), "s", limit);
            yield return LimitCheck.Of("engage-R", "engagement-time", EngagementReadings.Seconds(evidence.Sessions, Gear.Reverse, limit.Max), "s", limit);
        }
    }

    private static IEnumerable<Check> ClutchDifference(Evidence evidence)
    {
        if (evidence.Sheet.DifferenceClutchForwardReverse is not { IsJudged: true } limit)
        {
            yield break;
        }

        var (first, second) = evidence.BySession.Any(one => one.Steps.Good(Step.HoldForward) is not null && one.Steps.Good(Step.HoldReverse) is not null)
            ? (Step.HoldForward, Step.HoldReverse)
            : (Step.IdleForward, Step.IdleReverse);
        var difference = evidence.Newest(one =>
            one.InSheetUnit(one.Steps.Good(first)?.Clutch) is { } forward && one.InSheetUnit(one.Steps.Good(second)?.Clutch) is { } reverse ? forward.Less(reverse) : null);
        var size = difference is { Value: < 0 } ? difference.Scaled(-1) : difference;
        yield return LimitCheck.Of(StepCodes.Text(first), "difference-clutch", size, evidence.Sheet.Unit.Code(), limit);
    }
}
