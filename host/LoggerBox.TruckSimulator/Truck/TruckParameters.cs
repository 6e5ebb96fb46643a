namespace LoggerBox.TruckSimulator.Truck;

/// <summary>Everything that makes one truck differ from another, or from itself when it was new.</summary>
public sealed record TruckParameters
{
    public required EngineParameters Engine { get; init; }

    public required ConverterParameters Converter { get; init; }

    public required PressureCircuitParameters Pressures { get; init; }

    public required ClutchParameters ForwardClutch { get; init; }

    public required ClutchParameters ReverseClutch { get; init; }

    public required WorkHydraulicsParameters WorkHydraulics { get; init; }

    public required OilTemperatureParameters OilTemperature { get; init; }

    public DrivelineParameters Driveline { get; init; } = new();

    /// <summary>Slow hunting of the governor, rpm (one deviation).</summary>
    public double HuntingRpm { get; init; } = 4;
}
