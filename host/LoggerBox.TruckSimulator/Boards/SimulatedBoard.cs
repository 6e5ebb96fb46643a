using System;
using System.Collections.Generic;
using LoggerBox.Capture.Board;
using LoggerBox.Capture.Speed;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Boards;

/// <summary>The logger's board on the simulated truck: pickup, three loops, gear inputs, oil sensor, and the cues that it gave.</summary>
public sealed class SimulatedBoard : IBoard
{
    private const double PumpTeeth = 11;
    private const double OilNoiseCelsius = 0.2;
    private static readonly double[] FullScalePsi = [0, 500, 500, 300];
    private readonly LiftTruck _truck;
    private readonly InstrumentParameters _instruments;
    private readonly SeededChance _chance;
    private readonly PickupPulses _pickup;
    private readonly PulseSpeed _speed = new(InstrumentParameters.DeclaredPulses, InstrumentParameters.DeclaredRevolutions);
    private readonly CurrentLoop[] _loops = new CurrentLoop[Channel.Count];
    private readonly GearInput _gear;
    private readonly List<GivenCue> _cues = [];
    private double _pumpTurns;
    private long _now;

    public SimulatedBoard(LiftTruck truck, InstrumentParameters instruments, SeededChance chance)
    {
        ArgumentNullException.ThrowIfNull(instruments);
        _truck = truck;
        _chance = chance;
        _pickup = new PickupPulses(instruments, chance);
        _instruments = instruments;
        _gear = new GearInput(instruments, chance);
        for (int channel = Channel.Main; channel < Channel.Count; channel++)
        {
            double shift = channel == instruments.ShiftedChannel ? instruments.ShiftPascal : 0;
            _loops[channel] = new CurrentLoop(FullScalePsi[channel] * Units.PascalPerPsi, shift, instruments.Noise, chance);
        }
    }

    public IReadOnlyList<GivenCue> Cues => _cues;

    /// <summary>Speed on the logger's display, rpm.</summary>
    public double ShownRpm { get; private set; }

    /// <summary>What a bench pump puts on all three transducers, hoses off the truck; null: they hang on the truck.</summary>
    public double? BenchPascal { get; set; }

    public CurrentLoop Loop(int channel) => _loops[channel];

    public void Step(long fromMicroseconds, long stepMicroseconds)
    {
        double seconds = stepMicroseconds / 1e6;
        _now = fromMicroseconds + stepMicroseconds;
        _pickup.Turn(_truck.Rpm, fromMicroseconds, stepMicroseconds);
        _pickup.Read(out long count, out long microseconds);
        _speed.Poll(count, microseconds);
        for (int channel = Channel.Main; channel < Channel.Count; channel++)
        {
            _loops[channel].Follow(LinePascal(_instruments.LineOf(channel)), seconds);
        }

        _gear.Follow(_truck.Controls.Selector, seconds);
        _pumpTurns = (_pumpTurns + _truck.Rpm / 60 * seconds) % 1;
    }

    public void Read(SampleSet sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        _speed.Read(sample, sample.Microseconds);
        int tenths = sample.Values[Channel.Speed];
        ShownRpm = tenths == SampleSet.Missing ? 0 : tenths / 10.0;
        double ripple = Math.Sin(2 * Math.PI * PumpTeeth * _pumpTurns);
        double hertz = PumpTeeth * _truck.Rpm / 60;
        bool sparking = _truck.Controls.Ignition && _truck.Rpm > 0;
        for (int channel = Channel.Main; channel < Channel.Count; channel++)
        {
            sample.Values[channel] = _loops[channel].ReadCounts(ripple, hertz, sparking);
        }
    }

    private double LinePascal(int line) => BenchPascal ?? line switch
    {
        Channel.Main => _truck.MainPascal,
        Channel.Clutch => _truck.ClutchPascal,
        _ => _truck.ConverterPascal,
    };

    public Gear ReadGear() => _gear.Gear;

    // Both hands are on the truck: nobody presses the button, the logger recognises the steps.
    public Step ReadStepMark() => Protocol.Rules.Step.None;

    public int ReadOilTenthsCelsius() => (int)Math.Round(10 * (_truck.OilCelsius + OilNoiseCelsius * _instruments.Noise * _chance.Normal()));

    public void Show(Cue cue) => _cues.Add(new GivenCue(_now, cue));
}

public readonly record struct GivenCue(long Microseconds, Cue Cue);
