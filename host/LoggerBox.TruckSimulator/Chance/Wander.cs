using System;

namespace LoggerBox.TruckSimulator.Chance;

/// <summary>Chance that remembers: a first-order random walk about zero, as a governor hunts or a foot tires.</summary>
public sealed class Wander(SeededChance chance, double deviation, double memorySeconds)
{
    public double Value { get; private set; }

    public void Step(double seconds)
    {
        double kept = Math.Exp(-seconds / memorySeconds);
        Value = Value * kept + deviation * Math.Sqrt(1 - kept * kept) * chance.Normal();
    }
}
