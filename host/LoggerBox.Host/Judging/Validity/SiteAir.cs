using System;

namespace LoggerBox.Host.Judging.Validity;

/// <summary>
/// What thin air costs a naturally aspirated spark-ignition engine, after the SAE J1349 correction
/// CF = 1.180 (990 / dry hPa) sqrt((t + 273) / 298) - 0.18, with the ISA pressure of the altitude. Beyond its stated range above some
/// 1500 m: it widens what is believed, it never corrects a reading.
/// </summary>
public static class SiteAir
{
    private const double StandardAirCelsius = 25;
    private const double LeastStallDrop = 0.50;
    private const double MostStallDrop = 0.57;

    /// <summary>Fraction of full torque that is lost; 0 where neither altitude nor air temperature is known.</summary>
    public static double TorqueLoss(double? altitudeMetres, double? airCelsius)
    {
        if (altitudeMetres is null && airCelsius is null)
        {
            return 0;
        }

        double factor = CorrectionFactor(PressureHectopascal(altitudeMetres ?? 0), airCelsius ?? StandardAirCelsius);
        return Math.Max(0, 1 - (1 / factor));
    }

    /// <summary>Fraction that stall speed drops: 0.50 to 0.57 of the torque's, from the converter's square law and a falling torque curve.</summary>
    public static double StallDrop(double torqueLoss) => MostStallDrop * torqueLoss;

    /// <summary>Fraction of torque, at the most, that is lost where stall speed dropped by so much.</summary>
    public static double TorqueLossOf(double stallDrop) => stallDrop / LeastStallDrop;

    public static double CorrectionFactor(double dryHectopascal, double airCelsius) =>
        (1.180 * (990 / dryHectopascal) * Math.Sqrt((airCelsius + 273) / 298)) - 0.18;

    /// <summary>International Standard Atmosphere, troposphere.</summary>
    public static double PressureHectopascal(double altitudeMetres) =>
        1013.25 * Math.Pow(1 - (0.0065 * altitudeMetres / 288.15), 5.25588);
}
