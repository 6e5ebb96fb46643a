using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Host.Judging.Measuring;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Suspecting;

/// <summary>
/// One gear against neutral, one clutch against the other: sensor error, oil temperature and a wide limit cancel.
/// </summary>
public static class DifferenceObservations
{
    // Practical sizes, no published source: several times what two holds of a sound truck differ by, less than a fault that is felt.
    private const double PracticalMain = 0.08;

    /// <summary>At idle the seals of a sound clutch take a good part of what the pump gives.</summary>
    private const double PracticalMainAtIdle = 0.12;
    private const double PracticalConverter = 0.10;
    private const double PracticalClutch = 0.08;
    private const double Gross = 0.4;

    private static readonly Step[] ForwardSteps = [Step.IdleForward, Step.HoldForward];
    private static readonly Step[] ReverseSteps = [Step.IdleReverse, Step.HoldReverse];

    public static IEnumerable<Observed?> Of(Evidence evidence, Roles roles, PressureUnit unit)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ArgumentNullException.ThrowIfNull(roles);
        var main = new NeutralCurve(evidence.Steps, Channel.Main);
        var converter = new NeutralCurve(evidence.Steps, Channel.Converter);
        yield return AgainstNeutral(roles, Observation.MainIdleForwardAgainstNeutral, [Step.IdleForward], Channel.Main, main, PracticalMainAtIdle, unit);
        yield return AgainstNeutral(roles, Observation.MainIdleReverseAgainstNeutral, [Step.IdleReverse], Channel.Main, main, PracticalMainAtIdle, unit);
        yield return AgainstNeutral(roles, Observation.MainHoldForwardAgainstNeutral, [Step.HoldForward], Channel.Main, main, PracticalMain, unit);
        yield return AgainstNeutral(roles, Observation.MainHoldReverseAgainstNeutral, [Step.HoldReverse], Channel.Main, main, PracticalMain, unit);
        yield return AgainstNeutral(roles, Observation.ConverterForwardAgainstNeutral, ForwardSteps, Channel.Converter, converter, PracticalConverter, unit)
            ?? LowerOfTwo(roles, Observation.ConverterForwardAgainstNeutral, ForwardSteps, ReverseSteps, unit);
        yield return AgainstNeutral(roles, Observation.ConverterReverseAgainstNeutral, ReverseSteps, Channel.Converter, converter, PracticalConverter, unit)
            ?? LowerOfTwo(roles, Observation.ConverterReverseAgainstNeutral, ReverseSteps, ForwardSteps, unit);
        yield return Clutches(roles, unit);
        yield return ClutchBehindMain.Of(evidence, roles, Observation.ClutchAgainstMainForward, ForwardSteps, unit);
        yield return ClutchBehindMain.Of(evidence, roles, Observation.ClutchAgainstMainReverse, ReverseSteps, unit);
    }

    /// <summary>The largest difference of the steps, each at its own speed.</summary>
    private static Observed? AgainstNeutral(
        Roles roles, Observation observation, Step[] steps, int channel, NeutralCurve curve, double practical, PressureUnit unit)
    {
        Observed? worst = null;
        double size = -1;
        foreach (var step in steps)
        {
            if (roles.Of(step) is not { } hold || hold.Of(channel) is not { } reading
                || curve.BesideOf(hold) is not { } neutral || reading.OfOneSensor.RelativeTo(neutral.OfOneSensor) is not { } relative)
            {
                continue;
            }

            if (Math.Abs(relative.Value) - relative.Expanded > size)
            {
                size = Math.Abs(relative.Value) - relative.Expanded;
                string text = Sentences.AgainstNeutral(Words.ChannelName(channel), roles.Name(step), reading, neutral, relative.Value, unit);
                worst = Difference(observation, relative, practical, text);
            }
        }

        return worst;
    }

    /// <summary>Without a reading in neutral the higher of the two directions stands in for it.</summary>
    private static Observed? LowerOfTwo(Roles roles, Observation observation, Step[] steps, Step[] others, PressureUnit unit)
    {
        for (int i = 1; i >= 0; i--)
        {
            if (roles.Of(steps[i])?.Converter is { } reading && roles.Of(others[i])?.Converter is { } other && reading.OfOneSensor.RelativeTo(other.OfOneSensor) is { } relative)
            {
                var lower = relative.Value < 0 ? relative : new Measured(0, relative.Budget);
                return Difference(
                    observation,
                    lower,
                    PracticalConverter + 0.02,
                    Sentences.TwoSteps(Words.ChannelName(Channel.Converter), roles.Name(steps[i]), reading, roles.Name(others[i]), other, unit));
            }
        }

        return null;
    }

    private static Observed? Clutches(Roles roles, PressureUnit unit)
    {
        var pairs = new[] { (Step.IdleForward, Step.IdleReverse), (Step.HoldForward, Step.HoldReverse) };
        Observed? worst = null;
        double size = -1;
        foreach (var (first, second) in pairs)
        {
            if (roles.Of(first) is not { Clutch: { } forward } f || roles.Of(second) is not { Clutch: { } reverse } r)
            {
                continue;
            }

            // Each against its own main pressure where there is one, so that a difference of speed cancels, too.
            var one = f.Main is { Value: > 50_000 } mainF && r.Main is { Value: > 50_000 } mainR
                ? forward.OfOneSensor.Scaled(mainR.Value / mainF.Value)
                : forward.OfOneSensor;
            var relative = one.Less(reverse.OfOneSensor).Scaled(1 / Math.Max(Math.Max(forward.Value, reverse.Value), 10_000));
            if (Math.Abs(relative.Value) - relative.Expanded > size)
            {
                size = Math.Abs(relative.Value) - relative.Expanded;
                worst = Difference(
                    Observation.ClutchForwardAgainstReverse,
                    relative,
                    PracticalClutch,
                    Sentences.TwoSteps(Words.ChannelName(Channel.Clutch), roles.Name(first), forward, roles.Name(second), reverse, unit));
            }
        }

        return worst;
    }

    private static Observed Difference(Observation observation, Measured relative, double practical, string text) => new(
        observation,
        Grading.Difference(relative, practical, Gross),
        Math.Abs(relative.Value) > practical + relative.Expanded,
        text,
        0.8);
}
