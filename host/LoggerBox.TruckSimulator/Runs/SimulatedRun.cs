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
    private readonly bool _hasGearInput;

    /// <summary>The sample truck with a cause in it.</summary>
    public SimulatedRun(SimulatedCause cause, int seed)
        : this(Fitted(cause, seed), new JobHabits(), seed)
    {
    }

    /// <param name="withPerfectBoard">Whether a second, perfect set of instruments watches as well.</param>
    public SimulatedRun(FittedTruck fitted, JobHabits habits, int seed, bool withPerfectBoard = false)
    {
        ArgumentNullException.ThrowIfNull(fitted);
        ArgumentNullException.ThrowIfNull(habits);
        AltitudeMetres = fitted.AltitudeMetres;
        _hasGearInput = fitted.Instruments.TagWiring is not null;
        _truck = new LiftTruck(fitted.Truck, new SeededChance(seed, 2));
        Board = new SimulatedBoard(_truck, fitted.Instruments, new SeededChance(seed, 3));
        PerfectBoard = withPerfectBoard ? new SimulatedBoard(_truck, fitted.Instruments with { Noise = 0 }, new SeededChance(seed, 5)) : null;
        var person = new SeededChance(seed, 4);
        _technician = new ServiceTechnician(WholeJob.Write(person, habits), Board, person);
    }

    public SimulatedBoard Board { get; }

    /// <summary>The same instruments on the same truck at the same moments, fitted as rightly or wrongly, without any noise or error of their own.</summary>
    public SimulatedBoard? PerfectBoard { get; }

    /// <summary>Where the truck stands, as the work order says; null where it does not.</summary>
    public double? AltitudeMetres { get; }

    /// <summary>Virtual time since the logger was switched on.</summary>
    public long NowMicroseconds { get; private set; }

    /// <summary>The technician has read the last zero.</summary>
    public bool Finished => Board.BenchPascal is null && _technician.Finished;

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
            HasGearInput = _hasGearInput,
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
            // On the bench nobody works at the truck, whose engine stays off.
            if (Board.BenchPascal is null)
            {
                _technician.Work(_truck.Controls, _truck.Rpm, LiftTruck.StepSeconds);
            }

            _truck.Step();
            Board.Step(NowMicroseconds, StepMicroseconds);
            PerfectBoard?.Step(NowMicroseconds, StepMicroseconds);
            NowMicroseconds += StepMicroseconds;
        }
    }

    private static FittedTruck Fitted(SimulatedCause cause, int seed)
    {
        ArgumentNullException.ThrowIfNull(cause);
        return cause.Put(new FittedTruck(SampleTruck.Healthy(), new InstrumentParameters()), new SeededChance(seed, 1));
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
