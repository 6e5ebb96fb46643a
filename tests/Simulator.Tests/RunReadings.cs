using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Faults;
using LoggerBox.TruckSimulator.Runs;
using LoggerBox.TruckSimulator.Truck;

namespace LoggerBox.Simulator.Tests;

/// <summary>What was really so, and what the board read, in the last two seconds of each step of one run.</summary>
internal sealed class RunReadings
{
    private const int SettledSamples = 100;
    private readonly List<TruthRow> _truth = [];
    private readonly List<int[]> _samples = [];

    public RunReadings(string code, int seed)
    {
        Assert(SimulatedCauses.TryGet(code, out SimulatedCause? cause));
        Run = new SimulatedRun(cause!, seed);
        var sample = new SampleSet();
        Run.RunToEnd(now =>
        {
            sample.Microseconds = now;
            Run.Board.Read(sample);
            _truth.Add(Run.Truth);
            _samples.Add((int[])sample.Values.Clone());
        });
    }

    public SimulatedRun Run { get; }

    public IReadOnlyList<int[]> Samples => _samples;

    public double Rpm(Step step) => Settled(step).Average(i => _truth[i].Rpm);

    /// <summary>Speed as the logger has it.</summary>
    public double ShownRpm(Step step) => Settled(step).Average(i => _samples[i][Channel.Speed] / 10.0);

    public double Main(Step step) => Settled(step).Average(i => Units.Psi(_truth[i].MainPascal));

    public double Clutch(Step step) => Settled(step).Average(i => Units.Psi(_truth[i].ClutchPascal));

    public double Converter(Step step) => Settled(step).Average(i => Units.Psi(_truth[i].ConverterPascal));

    /// <summary>Median counts of a channel, single spikes left out.</summary>
    public int Counts(Step step, int channel) =>
        Settled(step).Select(i => _samples[i][channel]).Order().ElementAt(SettledSamples / 2);

    /// <summary>From the selector's move to 90 % of the settled clutch pressure, seconds.</summary>
    public double Engagement(Step step)
    {
        double settled = Settled(step).Average(i => _truth[i].ClutchPascal);
        int moved = _truth.FindIndex(row => row.Step == step && row.Selector != Selector.Neutral);
        int there = _truth.FindIndex(moved, row => row.ClutchPascal >= 0.9 * settled);
        return (_truth[there].Microseconds - _truth[moved].Microseconds) / 1e6;
    }

    // The last time that the step was done, as a judge would take it.
    private IEnumerable<int> Settled(Step step)
    {
        int last = _truth.FindLastIndex(row => row.Step == step);
        return Enumerable.Range(last - SettledSamples + 1, SettledSamples);
    }

    private static void Assert(bool exists) => Xunit.Assert.True(exists);
}
