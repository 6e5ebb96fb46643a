using System.Linq;
using LoggerBox.Board.Tests.Bench;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Board.Tests.Faults;

public class PickupFaultTests
{
    private const int RingGearTeeth = 126;

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    [InlineData(2)]
    public void A_reading_that_races_the_counters_overflow_is_never_a_speed(int races)
    {
        using BoardBench bench = OnARingGear();
        bench.Run(5);
        bench.Pulses.CountFrom(32767 * 40L);
        bench.Run(0.5);
        bench.Pulses.Races = races;
        bench.Run(10);
        bench.Press(2);
        ReadSession session = bench.Session();
        Assert.All(session.Values(Channel.Speed, 17, 27), value => Assert.InRange(value, 19900, 20100));
        Assert.Contains(session.Faults, fault => fault == (BoardFault.PulseCounter, 1));
    }

    [Fact]
    public void A_counter_that_races_at_every_single_reading_gives_no_speed_rather_than_a_wrong_one()
    {
        using BoardBench bench = OnARingGear();
        bench.Run(5);
        bench.Pulses.Races = 90;
        bench.Run(3);
        bench.Press(2);
        Assert.All(bench.Session().Values(Channel.Speed, 12, 30), value => Assert.True(value is >= 19900 and <= 20100 or SampleSet.Missing or 0, $"{value} tenths of rpm"));
    }

    [Fact]
    public void A_counter_that_began_anew_is_believed_after_half_a_second()
    {
        using BoardBench bench = OnARingGear();
        bench.Run(5);
        bench.Pulses.Restart();
        bench.Run(3);
        bench.Press(2);
        ReadSession session = bench.Session();
        Assert.All(session.Values(Channel.Speed, 18.5, 19.5), value => Assert.InRange(value, 19900, 20100));
    }

    [Theory]
    [InlineData(1, 1, 2400)]
    [InlineData(RingGearTeeth, 1, 300)]
    public void Polls_that_come_a_quarter_of_a_second_late_lose_sets_and_widen_the_error_to_their_bracket(int pulses, int revolutions, int tenths)
    {
        using BoardBench bench = With((ushort)pulses, (ushort)revolutions);
        bench.Run(5);
        for (int i = 0; i < 8; i++)
        {
            bench.Poll(250000);
            bench.Run(0.73);
        }

        bench.Press(2);
        ReadSession session = bench.Session();
        int[] speeds = session.Values(Channel.Speed, 14, 24);
        Assert.NotEmpty(speeds);

        // With eight pulses in the late bracket its last edge is known to a sixteenth of it: 16 ms of the 200 ms that are fitted.
        Assert.All(speeds, value => Assert.InRange(value, 20000 - tenths, 20000 + tenths));
        Assert.InRange(speeds.Average(), 19800, 20200);
        Assert.Equal(8, session.Dropouts.Count(dropout => dropout.Reason == DropoutReason.Overrun && dropout.ToMicroseconds - dropout.FromMicroseconds >= 240000));
        Assert.All(session.Dropouts, dropout => Assert.DoesNotContain(session.Sets, set => set.Microseconds > dropout.FromMicroseconds && set.Microseconds < dropout.ToMicroseconds));
    }

    private static BoardBench OnARingGear() => With(RingGearTeeth, 1);

    private static BoardBench With(ushort pulses, ushort revolutions)
    {
        BoardBench bench = new();
        bench.Pulses.Rpm = 2000;
        bench.Pulses.PulsesPerRevolution = (double)pulses / revolutions;
        bench.Start();
        bench.Memory.Settings.PlanNumber = (byte)bench.Memory.Plans.Put(new PlanRecord { Name = "pickup", PickupPulses = pulses, PickupRevolutions = revolutions });
        return bench.Run(11);
    }
}
