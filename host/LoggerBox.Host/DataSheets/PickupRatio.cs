using System;

namespace LoggerBox.Host.DataSheets;

/// <summary>Pulses per revolution as the ratio of two whole numbers that the logger computes with.</summary>
public static class PickupRatio
{
    private const int LargestRevolutions = 60;

    /// <summary>The ratio with the fewest revolutions that is within 0.001 % of the figure, or the nearest one; 0.5 gives 1 / 2.</summary>
    /// <param name="pulsesPerRevolution">0.01 to 1000.</param>
    public static (ushort Pulses, ushort Revolutions) From(double pulsesPerRevolution)
    {
        int best = 1;
        double leastError = double.MaxValue;
        for (int revolutions = 1; revolutions <= LargestRevolutions && leastError > pulsesPerRevolution * 1e-5; revolutions++)
        {
            double pulses = Math.Max(1, Math.Round(pulsesPerRevolution * revolutions));
            double error = Math.Abs(pulses / revolutions - pulsesPerRevolution);
            if (error < leastError)
            {
                (best, leastError) = (revolutions, error);
            }
        }

        return ((ushort)Math.Max(1, Math.Round(pulsesPerRevolution * best)), (ushort)best);
    }
}
