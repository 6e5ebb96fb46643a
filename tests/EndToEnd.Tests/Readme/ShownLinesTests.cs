using Xunit;

namespace LoggerBox.EndToEnd.Tests.Readme;

public class ShownLinesTests
{
    private const string Printed = "Reading a.csv\nIdle 702 rpm\nStall 1934 rpm\nDone in 2.8 s.\n";

    [Theory]
    [InlineData("Reading a.csv", "Idle 702 rpm", "Stall 1934 rpm", "Done in 2.8 s.")]
    [InlineData("Reading …", "…", "Done in … s.")]
    [InlineData("…")]
    public void Shown_lines_are_the_printed_ones(params string[] shown) => Assert.Null(ShownLines.Difference(shown, Printed));

    [Theory]
    [InlineData("not printed there: Idle 703 rpm", "Reading a.csv", "Idle 703 rpm", "…")]
    [InlineData("not printed there: Done in … s", "…", "Done in … s")]
    [InlineData("not printed there: Idle 702 rpm", "Reading a.csv", "…", "Stall 1934 rpm", "Idle 702 rpm")]
    [InlineData("not printed there: …", "…", "Done in 2.8 s.", "…")]
    [InlineData("more was printed than is shown", "Reading a.csv", "Idle 702 rpm")]
    [InlineData("more was printed than is shown")]
    public void What_differs_is_named(string difference, params string[] shown) => Assert.Equal(difference, ShownLines.Difference(shown, Printed));
}
