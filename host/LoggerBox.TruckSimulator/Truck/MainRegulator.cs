using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>Spool that spills the pump's surplus to the converter.</summary>
/// <param name="CrackPascal">Where it begins to spill.</param>
/// <param name="OverridePascal">Rise for each m3/s that it spills.</param>
/// <param name="StuckOpenArea">An opening that stays when the spool should be shut, m2.</param>
public sealed record MainRegulatorParameters(double CrackPascal, double OverridePascal, double StuckOpenArea = 0);

public sealed class MainRegulator(MainRegulatorParameters parameters)
{
    /// <summary>m3/s into the converter circuit.</summary>
    public double Spill(double mainPascal, double converterPascal, double density)
    {
        double regulated = Math.Max(0, mainPascal - parameters.CrackPascal) / parameters.OverridePascal;
        return regulated + Flow.ThroughOrifice(parameters.StuckOpenArea, Math.Max(0, mainPascal - converterPascal), density);
    }
}
