namespace LoggerBox.TruckSimulator.Truck;

public enum Selector
{
    Neutral,
    Forward,
    Reverse,
}

/// <summary>What the person in the seat does to the truck at one moment.</summary>
public sealed class Controls
{
    public bool Ignition { get; set; }

    public bool Starter { get; set; }

    /// <summary>0 released, 1 to the floor.</summary>
    public double Pedal { get; set; }

    public Selector Selector { get; set; }

    /// <summary>The brake pedal works the inching valve: no oil to the clutches while it is down.</summary>
    public bool Inching { get; set; }

    /// <summary>A work lever is held at its end, so that the work pump goes over its relief valve.</summary>
    public bool WorkLeverHeld { get; set; }

    /// <summary>Drive wheels clear of the floor; otherwise the truck is down, chocked and braked.</summary>
    public bool WheelsClear { get; set; }

    /// <summary>Service brake on wheels that are clear, to stop them before the selector moves.</summary>
    public bool Brake { get; set; }
}
