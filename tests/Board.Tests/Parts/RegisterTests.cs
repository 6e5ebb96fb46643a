using LoggerBox.BoardParts.Loops;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Board.Tests.Parts;

/// <summary>Against the ADS1115 data sheet, SBAS444: code table of the conversion register, fields of the configuration register.</summary>
public class RegisterTests
{
    [Theory]
    [InlineData(0x7FFF, 32767)]
    [InlineData(0x0001, 1)]
    [InlineData(0x0000, 0)]
    [InlineData(0xFFFF, -1)]
    [InlineData(0x8001, -32767)]
    public void Codes_are_two_s_complement(int word, int counts) => Assert.Equal(counts, Ads1115Register.Counts(word));

    [Fact]
    public void The_lowest_code_is_never_taken_for_a_missing_reading()
    {
        Assert.Equal(-32767, Ads1115Register.Counts(0x8000));
        Assert.NotEqual(SampleSet.Missing, Ads1115Register.Counts(0x8000));
    }

    [Fact]
    public void The_configuration_is_what_the_channels_page_says()
    {
        int word = Ads1115Register.FreeRunning;
        Assert.Equal(0, (word >> 12) & 7);
        Assert.Equal(1, (word >> 9) & 7);
        Assert.Equal(0, (word >> 8) & 1);
        Assert.Equal(5, (word >> 5) & 7);
        Assert.Equal(3, word & 3);
    }

    [Theory]
    [InlineData(0x02A3, true)]
    [InlineData(0x82A3, true)]
    [InlineData(0x8583, false)]
    [InlineData(0x0583, false)]
    [InlineData(0x03A3, false)]
    [InlineData(0x04A3, false)]
    [InlineData(0xFFFF, false)]
    [InlineData(0x0000, false)]
    public void Only_the_settings_that_were_written_are_trusted(int word, bool isRunning) => Assert.Equal(isRunning, Ads1115Register.IsFreeRunning(word));

    [Fact]
    public void A_loop_of_21_milliampere_is_still_inside_the_range() => Assert.InRange(21 * 0.1 / 0.000125, 0, short.MaxValue - 1);
}
