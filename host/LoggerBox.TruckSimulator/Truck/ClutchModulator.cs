using System;

namespace LoggerBox.TruckSimulator.Truck;

/// <summary>
/// Load piston behind an orifice: it lets the clutch have more pressure as it strokes, so that the plates take up softly.
/// </summary>
/// <param name="TouchPascal">Pressure allowed until the plates touch.</param>
/// <param name="RisePascalPerSecond">Rise with 5 bar on the orifice.</param>
/// <param name="CeilingPascal">It lets no more than this through; in order it opens fully.</param>
public sealed record ClutchModulatorParameters(double TouchPascal, double RisePascalPerSecond, double CeilingPascal = 40 * Units.PascalPerBar);

public sealed class ClutchModulator(ClutchModulatorParameters parameters)
{
    private const double OrificeReference = 5 * Units.PascalPerBar;
    private const double OpeningBand = 0.3 * Units.PascalPerBar;
    private double _allowed = parameters.TouchPascal;

    /// <summary>How far the way from main to clutch is open, 0 to 1.</summary>
    public double Opening(double clutchPascal) => Math.Clamp((_allowed - clutchPascal) / OpeningBand, 0, 1);

    public void Step(bool plateTouch, double clutchPascal, double seconds)
    {
        if (!plateTouch)
        {
            _allowed = parameters.TouchPascal;
            return;
        }

        double rise = parameters.RisePascalPerSecond * Math.Sqrt(Math.Max(0, clutchPascal) / OrificeReference);
        _allowed = Math.Min(parameters.CeilingPascal, _allowed + rise * seconds);
    }
}
