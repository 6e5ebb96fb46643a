namespace LoggerBox.TruckSimulator.Operator;

/// <summary>How carefully the job is done, and what goes wrong on the way.</summary>
public sealed record JobHabits
{
    /// <summary>How often a hold is first tried with a restless foot.</summary>
    public double RestlessShare { get; init; } = 0.3;

    /// <summary>How often a stall is first given up after a second.</summary>
    public double GivenUpShare { get; init; } = 0.25;

    /// <summary>First tries the stall with the foot on a brake that works the inching valve.</summary>
    public bool BrakesTheFirstStall { get; init; }

    /// <summary>Holds the wrong speed first, and then again at the right one.</summary>
    public bool HoldsWrongSpeedFirst { get; init; }

    /// <summary>Stalls, governed and relief before idle and hold.</summary>
    public bool SpeedsFirst { get; init; }

    public bool SkipsRelief { get; init; }

    public bool SkipsIdleInReverse { get; init; }

    public bool SkipsClosingZero { get; init; }

    /// <summary>Warms the oil up against the brake, half a pedal in gear, as manuals describe it.</summary>
    public bool WarmsUpInGear { get; init; }

    /// <summary>Does so once more after the stalls, because something else is still to be done.</summary>
    public bool WarmsUpAgain { get; init; }

    /// <summary>Nobody warms the oil up.</summary>
    public bool SkipsWarmUp { get; init; }
}
