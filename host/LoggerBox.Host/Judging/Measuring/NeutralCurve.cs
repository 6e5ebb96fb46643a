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
    /// Past the last known point pressure goes with some power of speed: by a half where the regulator holds it, by two where the pump gives
    /// less than the valves let through.
    /// </summary>
    private const double Exponent = 1.25;

    private const double ExponentHalfWidth = 0.75;

    private const double FarthestStep = 0.12;

    // Between two known points it may bend anywhere, where the regulator opens; it hardly rises less than by these powers, nor more.
    private const double LeastExponent = 0.2;
    private const double MostExponent = 2;

    /// <summary>Of speed: two holds in neutral that are no farther apart than this show the same thing at two temperatures of the oil.</summary>
    private const double SameSpeed = 0.05;

    private readonly List<Point> points;

    public NeutralCurve(StepReadings steps, int channel)
    {
        ArgumentNullException.ThrowIfNull(steps);
        points = steps.All
            .Where(hold => hold.Rpm is { Value: > MeasuredHold.RunningRpm } && hold.Of(channel) is not null && InNeutral(hold))
            .Select(hold => new Point(hold, hold.Rpm!.Value, hold.Of(channel)!.OfOneSensor))
            .OrderBy(point => point.Rpm)
            .ToList();
    }

    /// <summary>What it would have been in neutral then, at the hold's speed. Null where that is too far from every known point.</summary>
    public Measured? BesideOf(MeasuredHold hold)
    {
        ArgumentNullException.ThrowIfNull(hold);
        return hold.Rpm is { } rpm ? At(rpm.Value, [.. points.Where(point => !points.Exists(other => other.IsNearerInTime(point, hold)))]) : null;
    }

    private static Measured? At(double rpm, List<Point> points)
    {
        Point? below = points.LastOrDefault(point => point.Rpm <= rpm);
        Point? above = points.FirstOrDefault(point => point.Rpm > rpm);
        if (below is not null && above is not null && above.Rpm / below.Rpm < 3.5)
        {
            double share = (rpm - below.Rpm) / (above.Rpm - below.Rpm);
            double value = below.Pressure.Value + (share * (above.Pressure.Value - below.Pressure.Value));
            UncertaintyBudget bend = new UncertaintyBudget().AddRectangular(Bend(below, above, rpm, value));
            return new Measured(value, (share < 0.5 ? below : above).Pressure.Budget.With(bend));
        }

        Point? nearest = points.MinBy(point => Math.Abs(point.Rpm - rpm));
        return nearest is not null && Math.Abs(rpm - nearest.Rpm) < FarthestStep * nearest.Rpm
            ? Extrapolated(nearest.Pressure, rpm / nearest.Rpm)
            : null;
    }

    /// <summary>How far off the straight line the pressure can be: the farther from both points, the farther.</summary>
    private static double Bend(Point below, Point above, double rpm, double value)
    {
        double up = rpm / below.Rpm;
        double down = rpm / above.Rpm;
        double least = Math.Max(below.Pressure.Value * Math.Pow(up, LeastExponent), above.Pressure.Value * Math.Pow(down, MostExponent));
        double most = Math.Min(below.Pressure.Value * Math.Pow(up, MostExponent), above.Pressure.Value * Math.Pow(down, LeastExponent));
        return Math.Max(0, Math.Max(value - least, most - value));
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

    private sealed record Point(MeasuredHold Hold, double Rpm, Measured Pressure)
    {
        /// <summary>Than another at the same speed: the oil was nearer to what it was.</summary>
        public bool IsNearerInTime(Point other, MeasuredHold to) =>
            this != other && Math.Abs(Rpm - other.Rpm) < SameSpeed * Rpm && Away(to) < other.Away(to);

        private double Away(MeasuredHold to) =>
            Hold.Session == to.Session ? Math.Abs((double)Hold.Record.StartMicroseconds - to.Record.StartMicroseconds) : double.MaxValue;
    }
}
