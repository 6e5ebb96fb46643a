using System;
using LoggerBox.TruckSimulator.Chance;

namespace LoggerBox.TruckSimulator.Truck;

public sealed record PressureCircuitParameters
{
    public required ChargePumpParameters Pump { get; init; }

    public required MainRegulatorParameters Regulator { get; init; }

    /// <summary>Opens to the sump when the regulator does not; pascal, and pascal for each m3/s.</summary>
    public required MainRegulatorParameters SafetyValve { get; init; }

    /// <summary>Fixed feed from main to converter, m2.</summary>
    public required double ConverterFeedArea { get; init; }

    /// <summary>Inching valve, modulator and passage, wide open, m2.</summary>
    public required double ClutchFeedArea { get; init; }

    /// <summary>Whether the selector's spool, or its solenoid, lets oil to this clutch at all.</summary>
    public bool FeedsForward { get; init; } = true;

    public bool FeedsReverse { get; init; } = true;

    /// <summary>Of the regulator's spill, what goes to the converter: all of it in a series circuit, nothing where the converter has a feed of its own.</summary>
    public double SpillToConverter { get; init; } = 1;

    /// <summary>The inching valve lets this part of the main pressure through; all of it when it is released.</summary>
    public double InchingShare { get; init; } = 1;

    /// <summary>A hole from main to the sump, m2.</summary>
    public double MainLeakArea { get; init; }

    /// <summary>Valve body clearances, m3.</summary>
    public required double ValveBodyGap { get; init; }

    public required ClutchModulatorParameters Modulator { get; init; }

    public required ConverterCircuitParameters Converter { get; init; }
}

/// <summary>
/// Charge pump, main regulator whose spill feeds the converter (in series), modulator, selector and the two clutches.
/// </summary>
public sealed class PressureCircuit(
    PressureCircuitParameters parameters, ClutchParameters forward, ClutchParameters reverse, SeededChance chance)
{
    // Passages, hose with a little air, and the spool's own inertia in one figure.
    private const double Compliance = 1.5e-11;
    private readonly ChargePump _pump = new(parameters.Pump);
    private readonly MainRegulator _regulator = new(parameters.Regulator);
    private readonly MainRegulator _safetyValve = new(parameters.SafetyValve);
    private readonly ClutchModulator _modulator = new(parameters.Modulator);
    private readonly ConverterCircuit _converter = new(parameters.Converter);
    private readonly Wander _suction = new(chance, 1, 0.12);

    public Clutch Forward { get; } = new(forward);

    public Clutch Reverse { get; } = new(reverse);

    public double MainPascal { get; private set; }

    public double ConverterPascal => _converter.Pascal;

    /// <summary>At the common port: the pressure of the clutch that the selector feeds; nothing in neutral.</summary>
    public double ClutchPascal => Math.Max(Forward.Pascal, Reverse.Pascal);

    public double PumpTorque => _pump.Torque(MainPascal);

    public void Step(double rpm, Selector selector, double oilCelsius, double seconds)
    {
        double density = Oil.DensityAt(oilCelsius);
        double viscosity = Oil.DynamicViscosityAt(oilCelsius);
        double toForward = Feed(Forward, selector == Selector.Forward && parameters.FeedsForward, density);
        double toReverse = Feed(Reverse, selector == Selector.Reverse && parameters.FeedsReverse, density);
        double spill = _regulator.Spill(MainPascal, _converter.Pascal, density);
        double fixedFeed = Flow.ThroughOrifice(
            parameters.ConverterFeedArea, Math.Max(0, MainPascal - _converter.Pascal), density);
        double lost = Flow.ThroughGap(parameters.ValveBodyGap, MainPascal, viscosity) + Flow.ThroughOrifice(parameters.MainLeakArea, MainPascal, density)
            + _safetyValve.Spill(MainPascal, 0, density);
        double pumped = Pumped(rpm, viscosity, seconds);

        Engage(selector, seconds);
        Forward.Step(toForward, selector != Selector.Forward, density, viscosity, seconds);
        Reverse.Step(toReverse, selector != Selector.Reverse, density, viscosity, seconds);
        _converter.Step((parameters.SpillToConverter * spill) + fixedFeed, density, viscosity, seconds);
        double surplus = pumped - toForward - toReverse - spill - fixedFeed - lost;
        MainPascal = Math.Max(0, MainPascal + surplus * seconds / Compliance);
    }

    private double Pumped(double rpm, double viscosity, double seconds)
    {
        if (!parameters.Pump.IsWellFed)
        {
            _suction.Step(seconds);
        }

        return _pump.Flow(rpm, MainPascal, viscosity, _suction.Value);
    }

    private double Feed(Clutch clutch, bool selected, double density)
    {
        if (!selected)
        {
            return 0;
        }

        double drop = Math.Max(0, (parameters.InchingShare * MainPascal) - clutch.Pascal);
        return _modulator.Opening(clutch.Pascal) * Flow.ThroughOrifice(parameters.ClutchFeedArea, drop, density);
    }

    private void Engage(Selector selector, double seconds)
    {
        Clutch fed = selector == Selector.Reverse ? Reverse : Forward;
        bool touch = selector != Selector.Neutral && fed.PlatesTouch;
        _modulator.Step(touch, fed.Pascal, seconds);
    }
}
