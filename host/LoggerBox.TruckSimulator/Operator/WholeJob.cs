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
    private const double WrongRpm = 1780;
    private readonly SeededChance _chance;
    private readonly JobHabits _habits;
    private readonly List<Act> _acts = [];
    private bool _clear = true;

    private WholeJob(SeededChance chance, JobHabits habits)
    {
        _chance = chance;
        _habits = habits;
    }

    public static IReadOnlyList<Act> Write(SeededChance chance, JobHabits habits)
    {
        ArgumentNullException.ThrowIfNull(chance);
        ArgumentNullException.ThrowIfNull(habits);
        var job = new WholeJob(chance, habits);
        job.EngineOff(Step.Zero, 10);
        job.Idle(Step.None, 4);
        if (!habits.SkipsWarmUp)
        {
            job.Pedal(Step.None, PedalUse.HoldSpeed, 20, 1300);
        }

        if (habits.WarmsUpInGear)
        {
            job._clear = false;
            job.WarmUpInGear(Selector.Forward);
            job.ChangeSetUp(clear: true);
        }

        if (habits.SpeedsFirst)
        {
            job.ChangeSetUp(clear: false);
            job.FullPedalTests();
            job.ChangeSetUp(clear: true);
            job.PressureTests();
        }
        else
        {
            job.PressureTests();
            job.ChangeSetUp(clear: false);
            job.FullPedalTests();
        }

        if (habits.WarmsUpAgain)
        {
            job.WarmUpInGear(Selector.Reverse);
        }

        job.Idle(Step.None, 5);
        job.EngineOff(habits.SkipsClosingZero ? Step.None : Step.Zero, habits.SkipsClosingZero ? 0.5 : 12);
        return job._acts;
    }

    private void PressureTests()
    {
        IdleInEachGear();
        HoldInEachGear();
    }

    private void FullPedalTests()
    {
        FullPedalInNeutral();
        Stall(Step.StallForward, Selector.Forward);
        Stall(Step.StallReverse, Selector.Reverse);
    }

    private void IdleInEachGear()
    {
        Idle(Step.None, 4);
        Idle(Step.IdleNeutral, 9);
        Idle(Step.IdleForward, 9, Selector.Forward);
        Idle(Step.None, 4);
        if (!_habits.SkipsIdleInReverse)
        {
            Idle(Step.IdleReverse, 9, Selector.Reverse);
            Idle(Step.None, 4);
        }
    }

    private void HoldInEachGear()
    {
        Hold(Step.HoldNeutral, Selector.Neutral);
        Idle(Step.None, 4);
        if (_chance.Happens(_habits.RestlessShare))
        {
            HoldBadly(HoldRpm, restless: true);
        }

        if (_habits.HoldsWrongSpeedFirst)
        {
            HoldBadly(WrongRpm, restless: false);
        }

        Hold(Step.HoldForward, Selector.Forward);
        Idle(Step.None, 4);
        Hold(Step.HoldReverse, Selector.Reverse);
        Idle(Step.None, 4);
    }

    // Shortened like all that waits for oil, and still far longer than a stall.
    private void WarmUpInGear(Selector selector)
    {
        Idle(Step.None, 3, selector);
        Add(new Act { Seconds = 30, Selector = selector, Pedal = PedalUse.HoldSpeed, TargetRpm = 1300, Brake = true });
        Idle(Step.None, 4, selector);
        Idle(Step.None, 4);
    }

    private void ChangeSetUp(bool clear)
    {
        EngineOff(Step.None, 15);
        _clear = clear;
        Idle(Step.None, 7);
    }

    private void FullPedalInNeutral()
    {
        Pedal(Step.Governed, PedalUse.Floor, 7);
        if (!_habits.SkipsRelief)
        {
            Add(new Act { Step = Step.Relief, Seconds = 4.2, Pedal = PedalUse.Floor, WorkLever = true });
            Pedal(Step.None, PedalUse.Floor, 1.5);
        }

        Idle(Step.None, 6);
    }

    private void Stall(Step step, Selector selector)
    {
        if (_chance.Happens(_habits.GivenUpShare))
        {
            GiveUpStall(selector);
        }

        if (_habits.BrakesTheFirstStall && selector == Selector.Forward)
        {
            StallOnTheBrake(selector);
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

    private void StallOnTheBrake(Selector selector)
    {
        Idle(Step.None, 3, selector);
        Add(new Act { Seconds = 5, Selector = selector, Pedal = PedalUse.FloorUntilCue, Brake = true, BrakeInches = true });
        Idle(Step.None, 3, selector);
        Idle(Step.None, 6);
    }

    private void Hold(Step step, Selector selector)
    {
        Idle(Step.None, 3.5, selector);
        Add(new Act { Step = step, Seconds = 11, Selector = selector, Pedal = PedalUse.HoldSpeed, TargetRpm = HoldRpm });
        Idle(Step.None, 4, selector);
    }

    private void HoldBadly(double targetRpm, bool restless)
    {
        Idle(Step.None, 3.5, Selector.Forward);
        Add(new Act { Seconds = restless ? 6 : 9, Selector = Selector.Forward, Pedal = PedalUse.HoldSpeed, TargetRpm = targetRpm, Restless = restless });
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
