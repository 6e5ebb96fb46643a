using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Capture.Tests.Engagements;

/// <summary>
/// Step responses whose transition durations and overshoots are known in closed form. Terms and levels as IEEE Std 181 defines them
/// (transition between percent reference levels of the two states; overshoot in percent of the step); figures computed from the
/// responses' formulas: first order 10 to 90 % in tau ln 9 = 2.1972 tau, 0 to 90 % in tau ln 10; second order, damping 0.5: overshoot
/// 16.30 %, damping 0.7: 4.599 % (exp(-pi zeta / sqrt(1 - zeta^2))).
/// </summary>
public class StepResponseTests
{
    private const double Settled = 400;
    private const double At = 10;

    [Theory]
    [InlineData(100, 0.2)]
    [InlineData(100, 0.4)]
    [InlineData(50, 0.4)]
    [InlineData(200, 0.3)]
    public void A_first_order_step_reaches_ninety_percent_after_tau_ln_ten(int rate, double tau)
    {
        EngagementRecord step = Of(rate, since => 1 - Math.Exp(-since / tau));
        double sample = 1.0 / rate;
        Assert.InRange(step.TotalMilliseconds / 1000.0, (tau * Math.Log(10)) - (2 * sample), (tau * Math.Log(10)) + (2 * sample));
        Assert.InRange(step.OvershootPerMille, 0, 8);
    }

    [Theory]
    [InlineData(0.5, 163.0)]
    [InlineData(0.7, 45.99)]
    public void A_second_order_step_overshoots_by_its_damping(double damping, double perMille)
    {
        const double natural = 5;
        double damped = natural * Math.Sqrt(1 - (damping * damping));
        EngagementRecord step = Of(100, since => 1 - (Math.Exp(-damping * natural * since)
            * (Math.Cos(damped * since) + (damping * natural / damped * Math.Sin(damped * since)))));
        Assert.InRange(step.OvershootPerMille, perMille - 8, perMille + 8);
    }

    private static EngagementRecord Of(int rate, Func<double, double> response)
    {
        Random random = new(3);
        List<Row> rows = [.. Enumerable.Range(0, 20 * rate).Select(i => (double)i / rate).Select(time => new Row(
            time,
            740 + (4 * (random.NextDouble() - 0.5)),
            420 + (random.NextDouble() - 0.5),
            (time < At ? 0 : Settled * response(time - At)) + (random.NextDouble() - 0.5),
            150,
            time < At ? Gear.Neutral : Gear.Forward))];
        return Assert.Single(Replayed.Run(rows).Engagements);
    }
}
