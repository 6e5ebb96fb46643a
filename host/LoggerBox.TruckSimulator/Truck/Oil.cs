using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>Typical automatic transmission fluid (34.5 mm2/s at 40 C and 7.2 at 100 C: from memory, common practice).</summary>
public static class Oil
{
    // Walther's equation (ASTM D341), log10 log10(v + 0.7) = A - B log10 T, through the two points above.
    private const double A = 7.9347;
    private const double B = 3.1034;

    /// <summary>Kinematic viscosity, mm2/s.</summary>
    public static double ViscosityAt(double celsius) =>
        Math.Pow(10, Math.Pow(10, A - B * Math.Log10(celsius + 273.15))) - 0.7;

    /// <summary>kg/m3.</summary>
    public static double DensityAt(double celsius) => 860 - 0.65 * (celsius - 15);

    /// <summary>Dynamic viscosity, Pa s.</summary>
    public static double DynamicViscosityAt(double celsius) => ViscosityAt(celsius) * 1e-6 * DensityAt(celsius);
}
