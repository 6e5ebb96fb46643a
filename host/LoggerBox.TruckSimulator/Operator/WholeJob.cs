using System;
using System.Collections.Generic;
using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Operator;

/// <summary>
/// The whole job in its usual order: zero, idle and hold with the wheels clear, engine off to let the truck down, governed, relief,
/// stalls with cool-downs between, zero again. Waiting for people (set-up, warm-up) is shortened, times that oil needs are not.
/// </summary>
public sealed class WholeJob
{
    private const double HoldRpm = 2000;
    private readonly SeededChance _chance;
    private readonly List<Act> _acts = [];
    private bool _clear = true;

    private WholeJob(SeededChance chance) => _chance = chance;

    public static IReadOnlyList<Act> Write(SeededChance chance)
    {
        ArgumentNullException.ThrowIfNull(chance);
        var job = new WholeJob(chance);
        job.EngineOff(Step.Zero, 10);
        job.Idle(Step.None, 4);
        job.Pedal(Step.None, PedalUse.HoldSpeed, 20, 1300);
        job.IdleInEachGear();
        job.HoldInEachGear();
        job.LetTheTruckDown();
        job.FullPedalInNeutral();
        job.Stall(Step.StallForward, Selector.Forward);
        job.Stall(Step.StallReverse, Selector.Reverse);
        job.Idle(Step.None, 5);
        job.EngineOff(Step.Zero, 12);
        return job._acts;
    }

    private void IdleInEachGear()
    {
        Idle(Step.None, 4);
        Idle(Step.IdleNeutral, 9);
        Idle(Step.IdleForward, 9, Selector.Forward);
        Idle(Step.None, 4);
        Idle(Step.IdleReverse, 9, Selector.Reverse);
        Idle(Step.None, 4);
    }

    private void HoldInEachGear()
    {
        Hold(Step.HoldNeutral, Selector.Neutral);
        Idle(Step.None, 4);
        if (_chance.Happens(0.3))
        {
            HoldBadly();
        }

        Hold(Step.HoldForward, Selector.Forward);
        Idle(Step.None, 4);
        Hold(Step.HoldReverse, Selector.Reverse);
        Idle(Step.None, 4);
    }

    private void LetTheTruckDown()
    {
        EngineOff(Step.None, 15);
        _clear = false;
        Idle(Step.None, 7);
    }

    private void FullPedalInNeutral()
    {
        Pedal(Step.Governed, PedalUse.Floor, 7);
        Add(new Act { Step = Step.Relief, Seconds = 4.2, Pedal = PedalUse.Floor, WorkLever = true });
        Pedal(Step.None, PedalUse.Floor, 1.5);
        Idle(Step.None, 6);
    }

    private void Stall(Step step, Selector selector)
    {
        if (_chance.Happens(0.25))
        {
            GiveUpStall(selector);
        }

        Idle(Step.None, 3.5, selector);
        Add(new Act { Step = step, Seconds = 5.8, Selector = selector, Pedal = PedalUse.FloorUntilCue });
        Idle(Step.None, 2.2, selector);
        Idle(Step.None, 1.5);
        Pedal(Step.None, PedalUse.HoldSpeed, 64, 1150);
        Idle(Step.None, 4);
    }

    private void GiveUpStall(Selector selector)
    {
        Idle(Step.None, 3, selector);
        Add(new Act { Seconds = 1, Selector = selector, Pedal = PedalUse.Floor });
        Idle(Step.None, 4, selector);
        Idle(Step.None, 4);
    }

    private void Hold(Step step, Selector selector)
    {
        Idle(Step.None, 3.5, selector);
        Add(new Act { Step = step, Seconds = 11, Selector = selector, Pedal = PedalUse.HoldSpeed, TargetRpm = HoldRpm });
        Idle(Step.None, 4, selector);
    }

    private void HoldBadly()
    {
        Idle(Step.None, 3.5, Selector.Forward);
        Add(new Act { Seconds = 6, Selector = Selector.Forward, Pedal = PedalUse.HoldSpeed, TargetRpm = HoldRpm, Restless = true });
        Idle(Step.None, 4, Selector.Forward);
        Idle(Step.None, 4);
    }

    // Clear wheels are braked in neutral, so that they stand before the next direction.
    private void Idle(Step step, double seconds, Selector selector = Selector.Neutral) =>
        Add(new Act { Step = step, Seconds = seconds, Selector = selector, Brake = selector == Selector.Neutral });

    private void Pedal(Step step, PedalUse use, double seconds, double targetRpm = 0) =>
        Add(new Act { Step = step, Seconds = seconds, Pedal = use, TargetRpm = targetRpm });

    private void EngineOff(Step step, double seconds) =>
        Add(new Act { Step = step, Seconds = seconds, EngineOn = false, Brake = true });

    // Full pedal is timed by the clock; all else lasts as people are, and only longer.
    private void Add(Act act)
    {
        double longer = act.Pedal == PedalUse.Floor || act.Pedal == PedalUse.FloorUntilCue ? 0.06 : 0.25;
        _acts.Add(act with { Seconds = act.Seconds * _chance.Between(1, 1 + longer), WheelsClear = _clear });
    }
}
