using System;
using System.Globalization;
using LoggerBox.Host.Tables;
using Xunit;

namespace LoggerBox.Host.Tests.Tables;

/// <summary>Beside the platform's own fixed format, which rounds the number itself ("0.##" rounds its first fifteen figures).</summary>
public class DecimalsTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(6)]
    public void Figures_are_those_of_the_platform(int count)
    {
        var random = new Random(7);
        for (int i = 0; i < 100_000; i++)
        {
            double value = (random.NextDouble() - 0.5) * Math.Pow(10, random.Next(-3, 7));
            string all = value.ToString("F" + count, CultureInfo.InvariantCulture);
            all = all.AsSpan().ContainsAnyInRange('1', '9') ? all : all.TrimStart('-');
            Assert.Equal(all, new Decimals(count, AreKept: true).Of(value));
            Assert.Equal(all.Contains('.', StringComparison.Ordinal) ? all.TrimEnd('0').TrimEnd('.') : all, new Decimals(count, AreKept: false).Of(value));
        }
    }

    [Theory]
    [InlineData(0, "0")]
    [InlineData(-0.001, "0")]
    [InlineData(-0.125, "-0.13")]
    [InlineData(0.125, "0.13")]
    [InlineData(0.996, "1")]
    [InlineData(10.1, "10.1")]
    [InlineData(1e17, "100000000000000000")]
    [InlineData(double.NaN, "NaN")]
    public void Half_goes_away_from_zero_and_nothing_is_no_minus(double value, string figures) => Assert.Equal(figures, new Decimals(2, AreKept: false).Of(value));
}
