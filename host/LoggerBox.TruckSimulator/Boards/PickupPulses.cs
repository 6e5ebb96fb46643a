using LoggerBox.Capture.Board;
using LoggerBox.TruckSimulator.Chance;

namespace LoggerBox.TruckSimulator.Boards;

/// <summary>
/// Inductive pickup, its comparator and the hardware counter behind it: crank angle in, counted edges out, each at its own moment.
/// </summary>
public sealed class PickupPulses(InstrumentParameters instruments, SeededChance chance) : IPulseCounter
{
    // Cyclic irregularity: an edge comes this share of a period early or late (one deviation).
    private const double EdgeJitter = 0.004;
    private const double MissedShare = 0.001;

    // Another lead's spark, somewhere between two edges of ours.
    private const double StrayShare = 0.002;
    private readonly double _spacing =
        (double)InstrumentParameters.DeclaredRevolutions / instruments.PulsesInThoseRevolutions;

    private double _revolutions;
    private double _nextTurn = 0.37;
    private double _nextEdge = 0.37;
    private double _strayEdge = double.PositiveInfinity;
    private long _count;
    private long _countAtPoll;
    private long _microseconds;

    /// <summary>
    /// Turns the crank through one step and leaves the counter as it stood at a moment within the step: a poll comes when the loop comes round.
    /// </summary>
    public void Turn(double rpm, long fromMicroseconds, long stepMicroseconds)
    {
        double turned = rpm / 60e6 * stepMicroseconds;
        double pollShare = chance.Between(0.1, 0.9);
        CountUpTo(_revolutions + turned * pollShare);
        _countAtPoll = _count;
        _microseconds = fromMicroseconds + (long)(stepMicroseconds * pollShare);
        _revolutions += turned;
        CountUpTo(_revolutions);
    }

    public void Read(out long count, out long microseconds)
    {
        count = _countAtPoll;
        microseconds = _microseconds;
    }

    private void CountUpTo(double revolutions)
    {
        if (_strayEdge <= revolutions)
        {
            _count++;
            _strayEdge = double.PositiveInfinity;
        }

        while (_nextEdge <= revolutions)
        {
            _count += chance.Happens(MissedShare * instruments.Noise) ? 0 : 1;
            _strayEdge = chance.Happens(StrayShare * instruments.Noise) ? _nextTurn + chance.Between(0.1, 0.9) * _spacing : _strayEdge;
            _nextTurn += _spacing;
            _nextEdge = _nextTurn + chance.Normal() * EdgeJitter * instruments.Noise * _spacing;
        }
    }
}
