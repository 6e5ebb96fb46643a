using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>Converter inlet: back-pressure valve, cooler and lubrication as one outlet; inlet relief valve to the sump.</summary>
/// <param name="BackPressurePascal">Below this hardly anything leaves.</param>
/// <param name="OutletArea">Outlet with cooler, m2.</param>
/// <param name="CoolerGap">The cooler's narrow passages, in series with the outlet: cold oil hardly passes, m3.</param>
/// <param name="ReliefPascal">Inlet relief.</param>
/// <param name="ReliefStuckArea">Opening of a relief that does not close, m2.</param>
public sealed record ConverterCircuitParameters(
    double BackPressurePascal, double OutletArea, double CoolerGap, double ReliefPascal, double ReliefStuckArea = 0);

public sealed class ConverterCircuit(ConverterCircuitParameters parameters)
{
    // Shell, hoses and the air that is always in them; also keeps the step stable.
    private const double Compliance = 4e-11;

    // The hub seal lets a stopped truck's converter pressure go in a second or two.
    private const double BleedGap = 4e-13;
    private const double ReliefArea = 4e-5;

    public double Pascal { get; private set; }

    public void Step(double inflow, double density, double dynamicViscosity, double seconds)
    {
        double drop = Math.Max(0, Pascal - parameters.BackPressurePascal);
        double outlet = Flow.ThroughOrificeAndGap(parameters.OutletArea, parameters.CoolerGap, drop, density, dynamicViscosity);
        double relief = Flow.ThroughOrifice(ReliefArea, Math.Max(0, Pascal - parameters.ReliefPascal), density);
        double stuck = Flow.ThroughOrifice(parameters.ReliefStuckArea, Pascal, density);
        double bleed = Flow.ThroughGap(BleedGap, Pascal, dynamicViscosity);
        Pascal = Math.Max(0, Pascal + (inflow - outlet - relief - stuck - bleed) * seconds / Compliance);
    }
}
