using System;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>A drop is the difference of two readings, with the uncertainties of both (root of their squares, JCGM 100:2008, 5.1.2).</summary>
public sealed class DropOfSpeed
{
    [Theory]
    [InlineData(1)]
    [InlineData(60)]
    public void Its_uncertainty_is_that_of_both_however_few_values_they_rest_on(int degreesOfFreedom)
    {
        var session = new TestSession().Build();
        foreach (HoldRecord hold in session.Holds)
        {
            hold.Readings[Channel.Speed].DegreesOfFreedom = degreesOfFreedom;
            hold.Readings[Channel.Speed].StandardErrorThousandths = 9_000;
        }

        Judgement judgement = Judge.Of([session], TestSheet.Truck(), new JobFacts(), LoggerBox.Host.Units.PressureUnit.Psi);
        double Uncertainty(string step, string quantity) => judgement.Checks.Single(check => check.Step == step && check.Quantity == quantity).Uncertainty!.Value;
        double relief = judgement.Holds.Single(hold => hold.Step == Step.Relief).Rpm!.Uncertainty;
        double governed = Uncertainty("governed", "rpm");
        Assert.Equal(Math.Sqrt((governed * governed) + (relief * relief)), Uncertainty("governed", "rpm-drop"), 6);
    }
}
