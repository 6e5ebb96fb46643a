using System;
using System.Collections.Generic;
using System.Linq;

namespace LoggerBox.Host.DataSheets;

/// <summary>A dual-fuel truck of which nobody said what it burnt: what its fuels agree on can be judged, the rest cannot.</summary>
public static class FuelLimits
{
    private static readonly (string Words, Func<EngineLimits, Limit?> Of)[] Figures =
    [
        ("idle speed", engine => engine.IdleRpm),
        ("governed speed", engine => engine.GovernedRpm),
        ("the drop over relief", engine => engine.ReliefDropRpm),
        ("stall in F", engine => engine.StallForwardRpm),
        ("stall in R", engine => engine.StallReverseRpm),
        ("run-up", engine => engine.RunUpSeconds),
    ];

    public static bool IsFuelUnknown(DataSheet sheet, string? fuel)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return string.IsNullOrWhiteSpace(fuel) && sheet.EngineByFuel.Count > 0 && sheet.Engine.Fuel is null;
    }

    /// <summary>The limits that are the same whatever the fuel.</summary>
    public static EngineLimits Common(DataSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        Limit? Agreed(Func<EngineLimits, Limit?> of) => Agree(sheet, of) ? of(sheet.EngineByFuel.Values.First()) : null;
        return new EngineLimits(
            IdleRpm: Agreed(engine => engine.IdleRpm),
            GovernedRpm: Agreed(engine => engine.GovernedRpm),
            ReliefDropRpm: Agreed(engine => engine.ReliefDropRpm),
            StallForwardRpm: Agreed(engine => engine.StallForwardRpm),
            StallReverseRpm: Agreed(engine => engine.StallReverseRpm),
            RunUpSeconds: Agreed(engine => engine.RunUpSeconds));
    }

    /// <summary>What cannot be judged without the fuel, in words.</summary>
    public static IReadOnlyList<string> Differing(DataSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return [.. Figures.Where(figure => !Agree(sheet, figure.Of)).Select(figure => figure.Words)];
    }

    private static bool Agree(DataSheet sheet, Func<EngineLimits, Limit?> of)
    {
        Limit? first = of(sheet.EngineByFuel.Values.First());
        return sheet.EngineByFuel.Values.All(engine => Limit.SameBounds(of(engine), first));
    }
}
