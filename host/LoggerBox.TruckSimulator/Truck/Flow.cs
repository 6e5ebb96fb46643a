using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>Flow through openings, m3/s from pascal.</summary>
public static class Flow
{
    public const double DischargeCoefficient = 0.62;

    // Below this drop a real opening turns laminar; without it the slope at zero would be infinite and the steps unstable.
    private const double LaminarDrop = 10_000;

    /// <summary>Sharp-edged orifice: Q = Cd A sqrt(2 dp / rho), with the sign of the drop.</summary>
    public static double ThroughOrifice(double areaSquareMetres, double drop, double density)
    {
        double size = Math.Abs(drop);
        double flow = size >= LaminarDrop
            ? Math.Sqrt(2 * size / density)
            : Math.Sqrt(2 * LaminarDrop / density) * size / LaminarDrop;
        return DischargeCoefficient * areaSquareMetres * flow * Math.Sign(drop);
    }

    /// <summary>Narrow gap (seal ring, gear flank): proportional to the drop and to 1 / viscosity.</summary>
    /// <param name="gap">What the gap's shape comes to, m3.</param>
    /// <param name="drop">Pascal.</param>
    /// <param name="dynamicViscosity">Pa s.</param>
    public static double ThroughGap(double gap, double drop, double dynamicViscosity) => gap * drop / dynamicViscosity;

    /// <summary>An orifice and a narrow gap one after the other: the drop is the square law's and the gap's together.</summary>
    public static double ThroughOrificeAndGap(double areaSquareMetres, double gap, double drop, double density, double dynamicViscosity)
    {
        double laminar = dynamicViscosity / gap;
        double square = density / (2 * Math.Pow(DischargeCoefficient * areaSquareMetres, 2));
        return 2 * drop / (laminar + Math.Sqrt((laminar * laminar) + (4 * square * drop)));
    }

    public static double Area(double diameterMillimetres)
    {
        double metres = diameterMillimetres / 1000;
        return Math.PI / 4 * metres * metres;
    }
}
