using System;
using LoggerBox.Host.Link;
using LoggerBox.Protocol.Link;
using Xunit;

namespace LoggerBox.Host.Tests.Link;

public sealed class LoggerClockTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 2, 9, 30, 0, TimeSpan.FromHours(-7));

    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    [InlineData(-3)]
    public void A_clock_that_agrees_to_what_the_greeting_can_tell_is_left_alone(int seconds) => Assert.True(Clock(seconds).IsRight);

    [Theory]
    [InlineData(4, "was 4 s ahead")]
    [InlineData(-90, "was 90 s behind")]
    [InlineData(-3600, "was 60 min behind")]
    [InlineData(7 * 3600, "was 7 h ahead")]
    [InlineData(-400 * 86_400, "was 400 days behind")]
    public void A_clock_that_is_off_is_to_be_set_and_said_how_far(int seconds, string words)
    {
        Assert.False(Clock(seconds).IsRight);
        Assert.Equal(words, Clock(seconds).WhatIsWrong);
    }

    [Fact]
    public void A_clock_that_was_never_set_is_set()
    {
        LoggerClock clock = new(new HelloAnswer { UtcSeconds = 0 }, Now);
        Assert.False(clock.IsRight);
        Assert.Equal("was not set", clock.WhatIsWrong);
    }

    [Fact]
    public void A_computer_that_lost_its_own_clock_sets_nothing() =>
        Assert.True(new LoggerClock(new HelloAnswer { UtcSeconds = (uint)Now.ToUnixTimeSeconds() }, new DateTimeOffset(2000, 1, 1, 0, 0, 0, TimeSpan.Zero)).IsRight);

    private static LoggerClock Clock(int secondsAhead) => new(new HelloAnswer { UtcSeconds = (uint)(Now.ToUnixTimeSeconds() + secondsAhead) }, Now);
}
