using System;

namespace LoggerBox.TruckSimulator.Chance;

/// <summary>
/// A seeded source of chance whose sequence never changes with the platform: the same seed must give the same bytes on every
/// machine and with every runtime. SplitMix64.
/// </summary>
public sealed class SeededChance
{
    private ulong _state;
    private double _spareNormal;
    private bool _hasSpare;

    /// <param name="seed">The run's seed.</param>
    /// <param name="stream">Sources with different streams are independent, so that one part's draws never shift another's.</param>
    public SeededChance(int seed, int stream)
    {
        _state = ((ulong)(uint)seed << 32) | (uint)stream;
        NextBits();
    }

    /// <summary>Even over [0, 1).</summary>
    public double Unit() => (NextBits() >> 11) * (1.0 / (1UL << 53));

    public double Between(double low, double high) => low + (high - low) * Unit();

    public bool Happens(double probability) => Unit() < probability;

    /// <summary>Normal, mean 0, deviation 1 (polar method).</summary>
    public double Normal()
    {
        if (_hasSpare)
        {
            _hasSpare = false;
            return _spareNormal;
        }

        double x, y, square;
        do
        {
            x = 2 * Unit() - 1;
            y = 2 * Unit() - 1;
            square = x * x + y * y;
        }
        while (square >= 1 || square == 0);
        double factor = Math.Sqrt(-2 * Math.Log(square) / square);
        _spareNormal = y * factor;
        _hasSpare = true;
        return x * factor;
    }

    private ulong NextBits()
    {
        _state += 0x9E3779B97F4A7C15UL;
        ulong bits = _state;
        bits = (bits ^ (bits >> 30)) * 0xBF58476D1CE4E5B9UL;
        bits = (bits ^ (bits >> 27)) * 0x94D049BB133111EBUL;
        return bits ^ (bits >> 31);
    }
}
