using System;

namespace LoggerBox.Host.Judging.Measuring;

/// <summary>A value with what is known of its error; pressures in pascal, speeds in rpm, times in seconds.</summary>
public sealed record Measured(double Value, UncertaintyBudget Budget)
{
    private double? expanded;

    /// <summary>What is left of the uncertainty in a difference of two readings of one sensor: its own error is in both.</summary>
    public UncertaintyBudget? Repeating { get; init; }

    /// <summary>To be subtracted from another reading of the same sensor.</summary>
    public Measured OfOneSensor => Repeating is null ? this : new(Value, Repeating);

    /// <summary>For 95.45 %.</summary>
    public double Expanded => expanded ??= Budget.Expanded;

    public Measured Less(Measured other) => new(Value - other.Value, Budget.With(other.Budget));

    public Measured Scaled(double factor) => new(Value * factor, Budget.Scaled(factor));

    /// <summary>Relative difference to another reading, as a fraction of it; null where that one is nothing.</summary>
    public Measured? RelativeTo(Measured other) =>
        Math.Abs(other.Value) < double.Epsilon ? null : Less(other).Scaled(1 / other.Value);
}
