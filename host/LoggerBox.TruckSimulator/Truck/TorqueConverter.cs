using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>
/// What a converter takes and gives over the speed ratio (turbine over impeller). Capacity is the impeller torque at 1000 rpm, N m,
/// the form of Regulation (EU) 2017/2400, annex VI, appendix 9.
/// </summary>
public sealed record ConverterParameters(Curve CapacityAt1000, Curve TorqueRatio);

public readonly record struct ConverterTorques(double Impeller, double Turbine);

public sealed class TorqueConverter(ConverterParameters parameters)
{
    /// <summary>Torque taken from the engine and given to the turbine, N m; negative when the wheels drive the engine.</summary>
    public ConverterTorques At(double impellerRpm, double turbineRpm)
    {
        double impeller = Math.Max(impellerRpm, 1);
        if (turbineRpm > impeller)
        {
            return Overrun(impeller, turbineRpm);
        }

        double ratio = Math.Max(0, turbineRpm / impeller);
        double torque = parameters.CapacityAt1000.At(ratio) * Square(impeller / 1000);
        return new ConverterTorques(torque, torque * parameters.TorqueRatio.At(ratio));
    }

    // The stator freewheels: a plain coupling, turbine and impeller in exchanged parts.
    private ConverterTorques Overrun(double impeller, double turbine)
    {
        double torque = parameters.CapacityAt1000.At(impeller / turbine) * Square(turbine / 1000);
        return new ConverterTorques(-torque, -torque);
    }

    private static double Square(double value) => value * value;
}
