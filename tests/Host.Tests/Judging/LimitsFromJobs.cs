using LoggerBox.Host.Judging.FromJobs;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

public class LimitsFromJobs
{
    /// <summary>
    /// NIST/SEMATECH e-Handbook 7.2.6.3, Howe's factor, 43 readings, 90 % of them with 99 % confidence: 2.217. The others are exact factors
    /// as tabled (ISO 16269-6, from memory), which Howe's come near to.
    /// </summary>
    [Theory]
    [InlineData(43, 0.90, 0.99, 2.217, 0.001)]
    [InlineData(10, 0.95, 0.95, 3.379, 0.03)]
    [InlineData(5, 0.95, 0.95, 5.079, 0.06)]
    [InlineData(3, 0.95, 0.95, 9.916, 0.25)]
    public void Factors_of_the_tolerance_interval_are_those_of_the_tables(int count, double proportion, double confidence, double factor, double within) =>
        Assert.InRange(ToleranceInterval.Factor(count, proportion, confidence), factor - within, factor + within);

    [Fact]
    public void Readings_that_agree_by_chance_are_no_closer_than_their_uncertainty()
    {
        (double low, double high) = ToleranceInterval.Of([100, 100, 100], [2, 2, 2]);
        Assert.Equal(2 * ToleranceInterval.Factor(3, 0.95, 0.95), high - low, 6);
    }
}
