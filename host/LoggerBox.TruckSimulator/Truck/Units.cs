using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>The model computes in SI units; the trade's units meet it only here. Factors: NIST SP 811, appendix B.</summary>
public static class Units
{
    public const double PascalPerPsi = 6894.757293168361;
    public const double PascalPerBar = 1e5;
    public const double RadiansPerSecondPerRpm = 2 * Math.PI / 60;
    public const double CubicMetresPerSecondPerLitrePerMinute = 1e-3 / 60;

    public static double Rpm(double radiansPerSecond) => radiansPerSecond / RadiansPerSecondPerRpm;

    public static double Psi(double pascal) => pascal / PascalPerPsi;
}
