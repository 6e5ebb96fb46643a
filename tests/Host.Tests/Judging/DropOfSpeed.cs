using System;
using System.Linq;
using LoggerBox.Host.Judging;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>A drop is the difference of two readings, with the uncertainties of both (JCGM 100:2008: root of the squares 5.1.2, degrees of freedom G.4.1).</summary>
public sealed class DropOfSpeed
{
    [Theory]
    [InlineData(1, 4.53)]
    [InlineData(10, 2.13)]
    public void Its_uncertainty_is_that_of_both(int degreesOfFreedom, double coverage)
    {
        var session = new TestSession().Build();
        foreach (HoldRecord hold in session.Holds)
        {
            hold.Readings[Channel.Speed].DegreesOfFreedom = degreesOfFreedom;
            hold.Readings[Channel.Speed].StandardErrorThousandths = 9_000;
        }

        Judgement judgement = Judge.Of([session], TestSheet.Truck(), new JobFacts(), LoggerBox.Host.Units.PressureUnit.Psi);
        double drop = judgement.Checks.Single(check => check.Step == "governed" && check.Quantity == "rpm-drop").Uncertainty!.Value;

        // 0.9 rpm each, twice the degrees of freedom of one, table G.2; the last digit of the speed adds next to nothing.
        Assert.InRange(drop, Math.Sqrt(2) * 0.9 * coverage * 0.99, Math.Sqrt(2) * 0.9 * coverage * 1.02);
    }
}
