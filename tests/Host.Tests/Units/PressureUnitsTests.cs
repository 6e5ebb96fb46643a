using System;
using LoggerBox.Host.Units;
using Xunit;

namespace LoggerBox.Host.Tests.Units;

public class PressureUnitsTests
{
    /// <summary>NIST SP 811 (2008), Appendix B.8, as printed there to seven digits; kPa after the SI prefix.</summary>
    [Theory]
    [InlineData("psi", 6.894757e3)]
    [InlineData("kgfcm2", 9.80665e4)]
    [InlineData("bar", 1e5)]
    [InlineData("kPa", 1e3)]
    public void A_unit_is_worth_what_the_published_table_says(string code, double pascal)
    {
        Assert.True(PressureUnits.TryParse(code, out PressureUnit unit));
        Assert.Equal(code, unit.Code());
        Assert.InRange(unit.InPascal(), pascal * (1 - 1e-7), pascal * (1 + 1e-7));
    }

    /// <summary>The inch is 25.4 mm and the pound-force 4.4482216152605 N, both exact (NIST SP 811, B.8 footnotes): 1 bar = 14.503773773 psi.</summary>
    [Fact]
    public void A_bar_in_psi_has_ten_right_digits() =>
        Assert.Equal(14.503773773, PressureUnit.Bar.InPascal() / PressureUnit.Psi.InPascal(), 9);

    [Theory]
    [InlineData("PSI")]
    [InlineData("kpa")]
    [InlineData("kgf/cm2")]
    [InlineData("furlong")]
    [InlineData("")]
    public void Another_spelling_is_no_unit(string code) => Assert.False(PressureUnits.TryParse(code, out _));

    [Theory]
    [InlineData(PressureUnit.Psi, 70.04, "70.0 psi")]
    [InlineData(PressureUnit.Psi, 150.4, "150 psi")]
    [InlineData(PressureUnit.Kilopascal, 896.3, "896 kPa")]
    [InlineData(PressureUnit.Bar, 9.1399, "9.14 bar")]
    [InlineData(PressureUnit.KilogramForcePerSquareCentimetre, 9.1399, "9.14 kgf/cm²")]
    [InlineData(PressureUnit.Psi, -0.04, "0.0 psi")]
    [InlineData(PressureUnit.Bar, -0.51, "-0.51 bar")]
    public void A_reading_has_the_places_that_its_unit_deserves(PressureUnit unit, double pressure, string expected) =>
        Assert.Equal(expected, unit.Format(pressure));

    /// <summary>Boiling and freezing point of water, and the scale's crossing, by definition of both scales.</summary>
    [Theory]
    [InlineData(100, 212)]
    [InlineData(0, 32)]
    [InlineData(-40, -40)]
    public void Fahrenheit_follows_from_celsius(double celsius, double fahrenheit) => Assert.Equal(fahrenheit, Temperature.Fahrenheit(celsius), 9);

    [Fact]
    public void A_temperature_is_shown_on_both_scales() => Assert.Equal("82 °C (180 °F)", Temperature.Format(82.0));
}
