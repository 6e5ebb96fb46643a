using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Runs;

/// <summary>What was really so at one moment: rpm, pascal, degrees Celsius.</summary>
public readonly record struct TruthRow(
    long Microseconds,
    double Rpm,
    double TurbineRpm,
    double MainPascal,
    double ClutchPascal,
    double ConverterPascal,
    double OilCelsius,
    Selector Selector,
    Step Step);
