namespace LoggerBox.Host.Judging;

/// <summary>What a person wrote on the work order that bears on the judgement. Null is "not written down".</summary>
public sealed record JobFacts(
    string? Fuel = null,
    double? AltitudeMetres = null,
    double? AirCelsius = null,
    double? OilCelsius = null,
    string? OilLevel = null,
    string? OilLook = null);
