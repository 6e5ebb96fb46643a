using System;
using LoggerBox.Board.Tests.Bench;
using LoggerBox.BoardParts.Clock;
using Xunit;

namespace LoggerBox.Board.Tests.Parts;

public class ClockTests
{
    [Fact]
    public void Dates_agree_with_the_calendar_over_a_hundred_years()
    {
        Random chance = new(7);
        DateTime first = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);
        CivilTime time = new();
        for (int i = 0; i < 36525; i++)
        {
            DateTime moment = first.AddDays(i).AddSeconds(chance.Next(86400));
            uint seconds = (uint)new DateTimeOffset(moment).ToUnixTimeSeconds();
            Assert.True(time.TrySet(seconds));
            Assert.Equal((moment.Year, moment.Month, moment.Day, moment.Hour, moment.Minute, moment.Second), (time.Year, time.Month, time.Day, time.Hour, time.Minute, time.Second));
            Assert.True(time.IsPossible);
            Assert.Equal(seconds, time.ToUtcSeconds());
        }
    }

    [Fact]
    public void The_chip_gives_back_the_time_that_it_was_set_to()
    {
        Ds3231 chip = new(new SimulatedChips());
        Assert.True(chip.TryWrite(1795600000));
        Assert.True(chip.TryRead(out uint seconds));
        Assert.Equal(1795600000u, seconds);
    }

    [Theory]
    [InlineData(0, 0x6A)]
    [InlineData(1, 0x7F)]
    [InlineData(2, 0x32)]
    [InlineData(2, 0x52)]
    [InlineData(4, 0x00)]
    [InlineData(4, 0x32)]
    [InlineData(5, 0x13)]
    [InlineData(5, 0x00)]
    [InlineData(6, 0xA0)]
    public void Registers_that_are_no_time_are_no_time(int register, byte value)
    {
        SimulatedChips chips = new();
        Ds3231 chip = new(chips);
        chip.TryWrite(1795600000);
        chips.ClockRegisters[register] = value;
        Assert.False(chip.TryRead(out uint seconds));
        Assert.Equal(0u, seconds);
    }

    [Fact]
    public void A_chip_that_does_not_answer_has_no_time()
    {
        SimulatedChips chips = new() { IsStuck = true };
        Assert.False(new Ds3231(chips).TryRead(out _));
        Assert.False(new Ds3231(chips).TryWrite(1795600000));
    }
}
