using LoggerBox.Shop.Sheets;
using Xunit;

namespace LoggerBox.Shop.Tests.Sheets;

public sealed class SheetNameTests
{
    [Theory]
    [InlineData("truck.toml")]
    [InlineData("Truck 12 - LPG_v2.toml")]
    [InlineData("1.toml")]
    public void A_plain_name_is_good(string name) => Assert.True(SheetName.IsGood(name));

    // Windows' device names: learn.microsoft.com, "Naming Files, Paths, and Namespaces".
    [Theory]
    [InlineData("")]
    [InlineData(".toml")]
    [InlineData("../truck.toml")]
    [InlineData("..toml")]
    [InlineData("a..toml")]
    [InlineData("a/b.toml")]
    [InlineData("a\\b.toml")]
    [InlineData("C:truck.toml")]
    [InlineData("truck.toml:stream.toml")]
    [InlineData("nul.toml")]
    [InlineData("COM1.truck.toml")]
    [InlineData("con .toml")]
    [InlineData("truck.TOML")]
    [InlineData("truck.toml\0.toml")]
    [InlineData("truck\n.toml")]
    [InlineData("tr\u00FCck.toml")]
    [InlineData("truck\u202Elmot.toml")]
    [InlineData(" truck.toml")]
    [InlineData("-rf.toml")]
    [InlineData("truck")]
    public void A_name_that_means_anything_to_a_file_system_is_not(string name) => Assert.False(SheetName.IsGood(name));

    [Fact]
    public void A_name_that_is_too_long_is_not() => Assert.False(SheetName.IsGood(new string('a', 80) + ".toml"));
}
