using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>
/// A pressure of this truck over engine speed in neutral, where no clutch takes oil: what a reading in gear is compared with,
/// at its own speed, because two holds are never at quite the same one.
/// </summary>
public sealed class NeutralCurve
{
    /// <summary>
    /// Between two known points pressure against speed bends little. Past the last one it goes with some power of speed: by a half where the
    /// regulator holds it, by two where the pump gives less than the valves let through.
    /// </summary>
    private const double Exponent = 1.25;

    private const double ExponentHalfWidth = 0.75;

    private const double FarthestStep = 0.12;

    private readonly List<(double Rpm, Measured Pressure)> points;

    public NeutralCurve(StepReadings steps, int channel)
    {
        ArgumentNullException.ThrowIfNull(steps);
        points = steps.All
            .Where(hold => hold.Rpm is { Value: > 300 } && hold.Of(channel) is not null && InNeutral(hold))
            .Select(hold => (hold.Rpm!.Value, hold.Of(channel)!.OfOneSensor))
            .OrderBy(point => point.Item1)
            .ToList();
    }

    /// <summary>Null where the speed is too far from every known point.</summary>
    public Measured? At(double rpm)
    {
        var below = points.LastOrDefault(point => point.Rpm <= rpm);
        var above = points.FirstOrDefault(point => point.Rpm > rpm);
        if (below.Pressure is not null && above.Pressure is not null && above.Rpm / below.Rpm < 3.5)
        {
            double share = (rpm - below.Rpm) / (above.Rpm - below.Rpm);
            double value = below.Pressure.Value + (share * (above.Pressure.Value - below.Pressure.Value));
            return new Measured(value, (share < 0.5 ? below : above).Pressure.Budget);
        }

        var nearest = points.Count == 0 ? default : points.MinBy(point => Math.Abs(point.Rpm - rpm));
        return nearest.Pressure is not null && Math.Abs(rpm - nearest.Rpm) < FarthestStep * nearest.Rpm
            ? Extrapolated(nearest.Pressure, rpm / nearest.Rpm)
            : null;
    }

    private static Measured Extrapolated(Measured pressure, double speedRatio)
    {
        Measured scaled = pressure.Scaled(Math.Pow(speedRatio, Exponent));
        double halfWidth = scaled.Value * ExponentHalfWidth * Math.Abs(Math.Log(speedRatio));
        return scaled with { Budget = scaled.Budget.With(new UncertaintyBudget().AddRectangular(halfWidth)) };
    }

    private static bool InNeutral(MeasuredHold hold) => hold.Step switch
    {
        Step.IdleNeutral or Step.HoldNeutral or Step.Governed or Step.Relief => true,
        Step.None => hold.Gear == Gear.Neutral && !hold.Record.ClutchPressed,
        _ => false,
    };
}
