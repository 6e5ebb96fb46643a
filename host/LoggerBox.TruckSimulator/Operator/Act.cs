using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Operator;

public enum PedalUse
{
    Released,
    Floor,
    HoldSpeed,

    /// <summary>To the floor until the time is over or the logger says stop.</summary>
    FloorUntilCue,
}

/// <summary>One thing that the operator does for a while.</summary>
public sealed record Act
{
    /// <summary>The step that it is meant to be, for comparison only: the logger is not told.</summary>
    public Step Step { get; init; }

    public required double Seconds { get; init; }

    public bool EngineOn { get; init; } = true;

    public Selector Selector { get; init; }

    public PedalUse Pedal { get; init; }

    public double TargetRpm { get; init; }

    public bool Restless { get; init; }

    public bool WorkLever { get; init; }

    public bool WheelsClear { get; init; }

    public bool Brake { get; init; }

    /// <summary>The brake pedal works the inching valve, too.</summary>
    public bool BrakeInches { get; init; }
}
