using System;
using LoggerBox.TruckSimulator.Chance;

namespace LoggerBox.TruckSimulator.Operator;

/// <summary>A foot on the pedal: quick to the floor, less so at holding a speed that it reads off a display.</summary>
public sealed class Foot(SeededChance chance)
{
    private const double FullTravelSeconds = 0.25;
    private const double ReactionSeconds = 0.4;
    private const double SatisfiedRpm = 15;

    // What a foot believes about pedals: this many rpm from released to the floor.
    private const double RpmPerTravel = 1750;
    private readonly Wander _tremor = new(chance, 0.0012, 1.5);
    private readonly Wander _unrest = new(chance, 0.03, 1.2);
    private double _aim;
    private double _untilReaction;

    /// <summary>0 released, 1 to the floor.</summary>
    public double Pedal { get; private set; }

    /// <summary>Begins to hold a speed, overshooting more or less.</summary>
    public void Aim(double targetRpm, double shownRpm)
    {
        double guess = Pedal + (targetRpm - shownRpm) / RpmPerTravel;
        _aim = Math.Clamp(guess + chance.Between(0.0, 0.06), 0, 1);
        _untilReaction = chance.Between(0.8, 1.4);
    }

    public void HoldSpeed(double targetRpm, double shownRpm, bool restless, double seconds)
    {
        _tremor.Step(seconds);
        _unrest.Step(seconds);
        _untilReaction -= seconds;
        if (_untilReaction <= 0)
        {
            double error = targetRpm - shownRpm;
            _aim += Math.Abs(error) < SatisfiedRpm ? 0 : chance.Between(0.35, 0.6) * error / RpmPerTravel;
            _aim = Math.Clamp(_aim, 0, 1);
            _untilReaction = ReactionSeconds * chance.Between(0.7, 1.5);
        }

        Move(Math.Clamp(_aim + _tremor.Value + (restless ? _unrest.Value : 0), 0, 1), seconds);
    }

    public void Move(double wanted, double seconds)
    {
        double most = seconds / FullTravelSeconds;
        Pedal += Math.Clamp(wanted - Pedal, -most, most);
    }
}
