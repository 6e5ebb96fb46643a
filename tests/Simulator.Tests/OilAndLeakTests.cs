using LoggerBox.TruckSimulator.Truck;
using Xunit;

namespace LoggerBox.Simulator.Tests;

public sealed class OilAndLeakTests
{
    // Walther's equation (ASTM D341) through 34.5 mm2/s at 40 C and 7.2 at 100 C (typical fluid, from memory); the rest computed.
    [Theory]
    [InlineData(-20, 982)]
    [InlineData(0, 230)]
    [InlineData(20, 78.4)]
    [InlineData(40, 34.5)]
    [InlineData(60, 18.2)]
    [InlineData(80, 10.9)]
    [InlineData(93, 8.25)]
    [InlineData(100, 7.2)]
    [InlineData(120, 5.1)]
    public void Viscosity_follows_the_temperature(double celsius, double expected) =>
        Assert.Equal(expected, Oil.ViscosityAt(celsius), expected * 0.008);

    // Q = Cd A sqrt(2 dp / rho), Cd 0.62, 850 kg/m3, 9 bar: litres a minute computed from the formula.
    [Theory]
    [InlineData(1.0, 1.34)]
    [InlineData(1.5, 3.03)]
    [InlineData(2.0, 5.38)]
    [InlineData(3.0, 12.1)]
    public void A_hole_leaks_by_its_size(double diameterMillimetres, double expectedLitresAMinute)
    {
        double flow = Flow.ThroughOrifice(Flow.Area(diameterMillimetres), 9 * Units.PascalPerBar, 850);

        Assert.Equal(expectedLitresAMinute, flow / Units.CubicMetresPerSecondPerLitrePerMinute, 0.05);
    }

    // Common practice, no source: a narrow gap leaks about seven times as much at 80 C as at 20 C.
    [Fact]
    public void A_gap_that_cold_oil_hides_leaks_seven_times_as_much_hot()
    {
        double cold = Flow.ThroughGap(1e-13, 9e5, Oil.DynamicViscosityAt(20));
        double hot = Flow.ThroughGap(1e-13, 9e5, Oil.DynamicViscosityAt(80));

        Assert.InRange(hot / cold, 6.5, 8);
    }

    // Common practice, no source: T = mu z r (p A - F) with mu 0.12, 14 faces, 55/40 mm, 74.6 cm2, 1500 N; N m computed.
    [Theory]
    [InlineData(9, 420)]
    [InlineData(8, 360)]
    [InlineData(7, 300)]
    [InlineData(6, 240)]
    [InlineData(5, 179)]
    [InlineData(4, 119)]
    public void A_clutch_carries_by_its_pressure(double bar, double expectedTorque) =>
        Assert.Equal(expectedTorque, new Clutch(new ClutchParameters()).CapacityAt(bar * Units.PascalPerBar), 1.0);

    // Hydraulic power: 25 cm3 a revolution at 180 bar and 90 % take 80 N m (computed).
    [Fact]
    public void The_work_pump_over_relief_loads_the_engine() =>
        Assert.Equal(79.6, new WorkHydraulics(new WorkHydraulicsParameters(25e-6, 180e5, 0.9)).ReliefTorque, 0.1);
}
