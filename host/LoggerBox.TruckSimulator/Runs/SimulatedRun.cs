using System;
using LoggerBox.Protocol.Records;
using LoggerBox.TruckSimulator.Boards;
using LoggerBox.TruckSimulator.Chance;
using LoggerBox.TruckSimulator.Faults;
using LoggerBox.TruckSimulator.Operator;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.TruckSimulator.Runs;

/// <summary>
/// One whole job on virtual time: truck, technician and board. The same cause and seed give the same samples, always.
/// </summary>
public sealed class SimulatedRun
{
    /// <summary>50 sample sets a second.</summary>
    public const uint SampleIntervalMicroseconds = 20_000;
    private const int StepMicroseconds = 1000;
    private readonly LiftTruck _truck;
    private readonly ServiceTechnician _technician;

    public SimulatedRun(SimulatedCause cause, int seed)
    {
        ArgumentNullException.ThrowIfNull(cause);
        var sound = new FittedTruck(SampleTruck.Healthy(), new InstrumentParameters());
        FittedTruck fitted = cause.Put(sound, new SeededChance(seed, 1));
        _truck = new LiftTruck(fitted.Truck, new SeededChance(seed, 2));
        Board = new SimulatedBoard(_truck, fitted.Instruments, new SeededChance(seed, 3));
        var person = new SeededChance(seed, 4);
        _technician = new ServiceTechnician(WholeJob.Write(person), Board, person);
    }

    public SimulatedBoard Board { get; }

    /// <summary>Virtual time since the logger was switched on.</summary>
    public long NowMicroseconds { get; private set; }

    /// <summary>The technician has read the last zero.</summary>
    public bool Finished => _technician.Finished;

    public TruthRow Truth => new(
        NowMicroseconds,
        _truck.Rpm,
        _truck.TurbineRpm,
        _truck.MainPascal,
        _truck.ClutchPascal,
        _truck.ConverterPascal,
        _truck.OilCelsius,
        _truck.Controls.Selector,
        _technician.MeantStep);

    /// <summary>What the session header says of rate, pickup and loops; who and when is the caller's to fill in.</summary>
    public SessionHeader Header()
    {
        var header = new SessionHeader
        {
            StartMicroseconds = NowMicroseconds,
            SampleIntervalMicroseconds = SampleIntervalMicroseconds,
            PickupPulses = InstrumentParameters.DeclaredPulses,
            PickupRevolutions = InstrumentParameters.DeclaredRevolutions,
            HasGearInput = true,
        };
        for (int channel = Channel.Main; channel < Channel.Count; channel++)
        {
            header.Pressures[channel - 1] = Board.Loop(channel).Calibration();
        }

        return header;
    }

    /// <summary>Lets one sample interval pass.</summary>
    public void Advance()
    {
        long until = NowMicroseconds + SampleIntervalMicroseconds;
        while (NowMicroseconds < until)
        {
            _technician.Work(_truck.Controls, _truck.Rpm, LiftTruck.StepSeconds);
            _truck.Step();
            Board.Step(NowMicroseconds, StepMicroseconds);
            NowMicroseconds += StepMicroseconds;
        }
    }

    /// <summary>Runs the job to its end.</summary>
    /// <param name="sample">Called once a sample interval with the present time: the capture engine's step.</param>
    public void RunToEnd(Action<long> sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        while (!Finished)
        {
            Advance();
            sample(NowMicroseconds);
        }
    }
}
