using System;
using LoggerBox.Capture.Speed;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Capture.Tests.Speed;

/// <summary>rpm = 60 f / pulses per revolution (definition); a four-stroke's plug lead fires once in two revolutions.</summary>
public class PulseSpeedTests
{
    [Theory]
    [InlineData(1, 2, 700)]
    [InlineData(1, 2, 2000)]
    [InlineData(1, 1, 2450)]
    [InlineData(2, 1, 700)]
    [InlineData(3, 1, 3000)]
    [InlineData(60, 1, 2000)]
    [InlineData(135, 1, 2600)]
    public void A_steady_engine_is_read_within_what_polls_of_a_millisecond_allow(int pulses, int revolutions, double rpm)
    {
        // An edge is known to half a millisecond, and the window is at least 200 ms: half a per cent at the worst.
        int read = Read(pulses, revolutions, time => rpm / 60 * pulses / revolutions * time, 3);
        Assert.InRange(read / 10.0, rpm * 0.995, rpm * 1.005);
    }

    [Fact]
    public void One_lost_edge_of_a_plug_lead_does_not_halve_the_speed()
    {
        double perSecond = 2000 / 120.0;
        int read = Read(1, 2, time => time < 2 ? perSecond * time : (perSecond * time) - 1, 2.15);
        Assert.InRange(read / 10.0, 1960, 2040);
    }

    [Fact]
    public void One_extra_edge_of_a_plug_lead_does_not_raise_the_speed()
    {
        double perSecond = 2000 / 120.0;
        int read = Read(1, 2, time => time < 2.03 ? perSecond * time : (perSecond * time) + 1, 2.15);
        Assert.InRange(read / 10.0, 1940, 2060);
    }

    [Fact]
    public void An_engine_that_stops_reads_zero_and_never_a_speed_that_it_cannot_have()
    {
        PulseSpeed speed = new(1, 1);
        double perSecond = 750 / 60.0;
        int last = 0;
        for (int ms = 0; ms < 6000; ms++)
        {
            double time = Math.Min(ms / 1000.0, 3);
            speed.Poll((long)(perSecond * time), ms * 1000L);
            int now = speed.ReadTenths(ms * 1000L);
            if (ms > 3100)
            {
                Assert.True(now <= last + 60, $"{now / 10.0} rpm at {ms} ms after {last / 10.0}");
            }

            last = now;
        }

        Assert.Equal(0, last);
    }

    [Fact]
    public void Without_a_single_edge_the_speed_is_first_unknown_and_then_zero()
    {
        PulseSpeed speed = new(1, 2);
        speed.Poll(0, 0);
        Assert.Equal(SampleSet.Missing, speed.ReadTenths(1000));
        speed.Poll(0, 5000000);
        Assert.Equal(0, speed.ReadTenths(5000000));
    }

    [Fact]
    public void A_late_poll_widens_a_bracket_and_shifts_nothing()
    {
        Random random = new(3);
        PulseSpeed speed = new(60, 1);
        double perSecond = 2000.0;
        long time = 0;
        double worst = 0;
        for (int i = 0; i < 2000; i++)
        {
            time += 1000 + random.Next(9000);
            speed.Poll((long)(perSecond * time / 1e6), time);
            int read = speed.ReadTenths(time);
            worst = i < 100 ? 0 : Math.Max(worst, Math.Abs((read / 10.0) - 2000));
        }

        Assert.InRange(worst, 0, 10);
    }

    private static int Read(int pulses, int revolutions, Func<double, double> countAt, double seconds)
    {
        PulseSpeed speed = new(pulses, revolutions);
        long now = 0;
        for (; now < seconds * 1e6; now += 1000)
        {
            speed.Poll((long)countAt(now / 1e6), now);
        }

        return speed.ReadTenths(now);
    }
}
