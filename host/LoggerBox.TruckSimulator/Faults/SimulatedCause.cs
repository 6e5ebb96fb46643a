using System;
using LoggerBox.TruckSimulator.Boards;
using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Faults;

/// <summary>A truck and the instruments on it.</summary>
/// <param name="AltitudeMetres">Where it stands; null where nobody wrote it down.</param>
public sealed record FittedTruck(TruckParameters Truck, InstrumentParameters Instruments, double? AltitudeMetres = null);

/// <summary>One cause that can be put into the truck.</summary>
/// <param name="Code">The cause's code.</param>
/// <param name="UsualSeverity">0 just begins, 1 gross: such that the readings leave the sample truck's limits clearly.</param>
/// <param name="Apply">What it changes, at a severity.</param>
public sealed record SimulatedCause(string Code, double UsualSeverity, Func<FittedTruck, double, SeededChance, FittedTruck> Apply)
{
    /// <summary>Neither there nor not: a plug is missing or it is not.</summary>
    public bool IsAllOrNothing { get; init; }

    // No two worn parts are worn alike.
    private const double SeveritySpread = 0.06;

    /// <summary>The sample truck with this cause in it, its severity varied a little.</summary>
    public FittedTruck Put(FittedTruck healthy, SeededChance chance)
    {
        ArgumentNullException.ThrowIfNull(chance);
        double severity = Math.Clamp(UsualSeverity + chance.Between(-SeveritySpread, SeveritySpread), 0, 1);
        return Apply(healthy, severity, chance);
    }
}
