using System;
using LoggerBox.Host.Judging.Measuring;
using Xunit;

namespace LoggerBox.Host.Tests.Judging;

/// <summary>Examples of JCGM 100:2008 (GUM), the arithmetic done again; numbers of the examples from memory where the text was not at hand.</summary>
public sealed class UncertaintyAfterGum
{
    [Fact]
    public void Copper_expansion_half_width_4_3_7() =>
        Assert.Equal(0.23e-6, new UncertaintyBudget().AddRectangular(0.40e-6).Standard, 8);

    [Fact]
    public void Copper_expansion_unequal_bounds_4_3_8() =>
        Assert.Equal(0.15e-6, new UncertaintyBudget().AddRectangular((16.92e-6 - 16.40e-6) / 2).Standard, 8);

    [Fact]
    public void Resolution_is_0_29_of_the_digit_F_2_2_1() =>
        Assert.Equal(0.29, new UncertaintyBudget().AddResolution(1).Standard, 2);

    [Fact]
    public void End_gauge_effective_degrees_of_freedom_and_coverage_H_1()
    {
        var budget = new UncertaintyBudget().Add(25, 18).Add(9.7, 25.6).Add(2.9, 50).Add(16.6, 2);
        Assert.Equal(32, budget.Standard, 0);
        Assert.Equal(16, (int)budget.DegreesOfFreedom);
        Assert.Equal(2.92, UncertaintyBudget.CoverageFactor(budget.DegreesOfFreedom, 0.99), 2);
    }

    [Theory]
    [InlineData(1, 13.97)]
    [InlineData(5, 2.65)]
    [InlineData(5.99, 2.65)]
    [InlineData(10, 2.28)]
    [InlineData(50, 2.05)]
    [InlineData(double.PositiveInfinity, 2.00)]
    public void Students_t_for_95_45_percent_table_G_2(double degreesOfFreedom, double factor)
    {
        Assert.Equal(factor, UncertaintyBudget.CoverageFactor(degreesOfFreedom), 2);
        UncertaintyBudget budget = new UncertaintyBudget().Add(1, degreesOfFreedom);
        Assert.Equal(factor, budget.Expanded, 2);
        Assert.Equal(budget.Expanded, budget.Expanded);
    }

    [Fact]
    public void An_expanded_uncertainty_has_the_factor_of_its_degrees_of_freedom_whatever_was_asked_for_before()
    {
        for (int degreesOfFreedom = 6000; degreesOfFreedom > 0; degreesOfFreedom -= degreesOfFreedom > 50 ? 37 : 1)
        {
            Assert.Equal(UncertaintyBudget.CoverageFactor(degreesOfFreedom), new UncertaintyBudget().Add(1, degreesOfFreedom + 0.5).Expanded, 12);
        }
    }

    // Own budget: 500 psi at 0.25 % rectangular, 1 psi zero drift rectangular, repeatability 0.3, last digit 0.011 psi.
    [Fact]
    public void Transducer_budget_comes_to_1_9_psi()
    {
        var budget = new UncertaintyBudget().AddRectangular(1.25).AddRectangular(1).Add(0.3).Add(0.011);
        Assert.Equal(0.97, budget.Standard, 2);
        Assert.Equal(1.9, budget.Expanded, 1);
    }

    [Fact]
    public void Difference_holds_the_uncertainties_of_both()
    {
        var first = new Measured(10, new UncertaintyBudget().Add(3));
        var second = new Measured(4, new UncertaintyBudget().Add(4));
        Assert.Equal(5, first.Less(second).Budget.Standard, 9);
        Assert.Equal(6, first.Less(second).Value);
    }

    // Welch-Satterthwaite (JCGM 100:2008, G.4.1): two equal errors of one degree of freedom each have two together, and table G.2 has 4.53 for them.
    [Fact]
    public void Difference_of_two_readings_has_the_degrees_of_freedom_of_both()
    {
        var first = new Measured(10, new UncertaintyBudget().Add(1, 1));
        var second = new Measured(4, new UncertaintyBudget().Add(1, 1));
        Measured difference = first.Less(second);
        Assert.Equal(Math.Sqrt(2) * 4.53, difference.Expanded, 1);
        Assert.Equal(2 * difference.Expanded, difference.Scaled(-2).Expanded, 9);
    }

    [Fact]
    public void Nothing_known_is_no_uncertainty_and_no_error() => Assert.Equal(0, new UncertaintyBudget().Expanded);
}
