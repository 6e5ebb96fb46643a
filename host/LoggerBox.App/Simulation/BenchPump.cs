using System;
using System.IO;
using LoggerBox.Host;
using LoggerBox.Host.Units;

namespace LoggerBox.App.Simulation;

/// <summary>
/// The invented bench: a hand pump with a gauge, read from a file that somebody writes while the virtual logger records. The transducers keep their own
/// errors, which the calibration is to find.
/// </summary>
internal sealed class BenchPump(string path)
{
    private const long BetweenLooksMicroseconds = 100_000;

    private long nextLook;
    private double pascal;

    /// <summary>What the file says, looked at ten times a second; while it is being written anew the pressure stays.</summary>
    /// <exception cref="UserErrorException">It never said a pressure.</exception>
    public double Pascal(long microseconds)
    {
        if (microseconds >= nextLook)
        {
            nextLook = microseconds + BetweenLooksMicroseconds;
            pascal = Read() ?? (microseconds == 0 ? throw new UserErrorException(CalibrateMessages.NoBench(path)) : pascal);
        }

        return pascal;
    }

    private double? Read()
    {
        try
        {
            return PressureText.TryParse(File.ReadAllText(path).Trim(), out double read, out _) ? read : null;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
