using System;
using System.Collections.Generic;
using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Boards;
using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Operator;

/// <summary>
/// Works through the acts one after the other, with the logger's display for a tachometer. Lets off at the logger's stop cue;
/// other warnings do not keep this one from finishing the reading.
/// </summary>
public sealed class ServiceTechnician(IReadOnlyList<Act> acts, SimulatedBoard board, SeededChance chance)
{
    // The ear knows whether the engine has caught.
    private const double CaughtRpm = 450;
    private readonly Foot _foot = new(chance);
    private int _current = -1;
    private double _left;
    private double _handSeconds;
    private int _cuesBefore;

    public bool Finished => _current >= acts.Count;

    /// <summary>The step that is meant to be under way.</summary>
    public Step MeantStep => _current < 0 || Finished ? Step.None : acts[_current].Step;

    public void Work(Controls controls, double engineRpm, double seconds)
    {
        ArgumentNullException.ThrowIfNull(controls);
        _left -= seconds;
        if (_left <= 0 && !Finished)
        {
            Begin(_current + 1);
        }

        if (!Finished)
        {
            UseHands(controls, acts[_current], engineRpm, seconds);
            UseFoot(acts[_current], seconds);
            controls.Pedal = _foot.Pedal;
        }
    }

    private void Begin(int act)
    {
        _current = act;
        _cuesBefore = board.Cues.Count;
        if (Finished)
        {
            return;
        }

        _left = acts[act].Seconds;
        _handSeconds = chance.Between(0.05, 0.35);
        if (acts[act].Pedal == PedalUse.HoldSpeed)
        {
            _foot.Aim(acts[act].TargetRpm, board.ShownRpm);
        }
    }

    private void UseHands(Controls controls, Act act, double engineRpm, double seconds)
    {
        controls.Starter = act.EngineOn && engineRpm < CaughtRpm && (controls.Starter || !controls.Ignition);
        controls.Ignition = act.EngineOn;
        controls.WheelsClear = act.WheelsClear;
        controls.Brake = act.Brake;
        controls.Inching = act.BrakeInches;
        _handSeconds -= seconds;
        if (_handSeconds <= 0)
        {
            controls.Selector = act.Selector;
            controls.WorkLeverHeld = act.WorkLever;
        }
    }

    private void UseFoot(Act act, double seconds)
    {
        switch (act.Pedal)
        {
            case PedalUse.Floor:
                _foot.Move(1, seconds);
                break;
            case PedalUse.FloorUntilCue:
                _foot.Move(HeardStop() ? 0 : 1, seconds);
                break;
            case PedalUse.HoldSpeed:
                _foot.HoldSpeed(act.TargetRpm, board.ShownRpm, act.Restless, seconds);
                break;
            default:
                _foot.Move(0, seconds);
                break;
        }
    }

    private bool HeardStop()
    {
        for (int i = _cuesBefore; i < board.Cues.Count; i++)
        {
            if (board.Cues[i].Cue == Cue.StallStop)
            {
                return true;
            }
        }

        return false;
    }
}
