using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using LoggerBox.TruckSimulator.Boards;
using LoggerBox.TruckSimulator.Demo;
using LoggerBox.TruckSimulator.Faults;
using Xunit;

namespace LoggerBox.Simulator.Tests;

public sealed class RunTests
{
    [Fact]
    public void The_same_seed_gives_the_same_samples_and_another_seed_others()
    {
        List<int> first = Flat(new RunReadings("healthy", 11));

        Assert.Equal(first, Flat(new RunReadings("healthy", 11)));
        Assert.NotEqual(first, Flat(new RunReadings("healthy", 12)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void A_healthy_truck_reads_inside_its_sheet(int seed)
    {
        var run = new RunReadings(SimulatedCauses.Healthy, seed);

        Assert.InRange(run.ShownRpm(Step.IdleNeutral), 640, 750);
        Assert.InRange(run.ShownRpm(Step.Governed), 2410, 2490);
        Assert.InRange(run.Rpm(Step.Governed) - run.Rpm(Step.Relief), 100, 180);
        Assert.InRange(run.ShownRpm(Step.StallForward), 1860, 2000);
        Assert.InRange(run.ShownRpm(Step.HoldForward), 1935, 2065);
        Assert.InRange(run.Main(Step.HoldForward), 140, 174);
        Assert.InRange(run.Clutch(Step.HoldReverse), 134, 174);
        Assert.InRange(run.Converter(Step.HoldForward), 25, 39);
        Assert.InRange(run.Main(Step.IdleForward), 52, 80);
        Assert.InRange(run.Engagement(Step.IdleForward), 0.5, 1.7);
    }

    [Fact]
    public void A_wire_that_comes_off_reads_no_current_and_one_against_supply_clips()
    {
        Assert.True(SimulatedCauses.TryGet(SimulatedCauses.Healthy, out SimulatedCause? cause));
        var run = new TruckSimulator.Runs.SimulatedRun(cause, seed: 5);
        var sample = new SampleSet();
        run.Board.Loop(Channel.Main).Fault = LoopFault.Open;
        run.Board.Loop(Channel.Clutch).Fault = LoopFault.Short;
        run.Advance();
        sample.Microseconds = run.NowMicroseconds;
        run.Board.Read(sample);

        Assert.InRange(sample.Values[Channel.Main], -20, 20);
        Assert.Equal(32767, sample.Values[Channel.Clutch]);
        Assert.InRange(sample.Values[Channel.Converter], 3100, 3300);
    }

    [Fact]
    public void Every_cause_that_the_judge_knows_can_be_put_into_the_truck_and_no_other()
    {
        string[] known = [.. Enumerable.Range(0, CauseCodes.Count).Select(number => CauseCodes.Text((Cause)number))];
        Assert.Equal([SimulatedCauses.Healthy, .. known], SimulatedCauses.All.Select(cause => cause.Code));
        Assert.False(SimulatedCauses.TryGet("flat-tyre", out _));
    }

    [Fact]
    public void The_sample_sheet_travels_with_the_program() =>
        Assert.Contains("name   = \"Sample truck\"", SampleSheet.Text(), StringComparison.Ordinal);

    private static List<int> Flat(RunReadings run) => run.Samples.SelectMany(values => values).ToList();
}
