using System;
using System.IO;
using LoggerBox.Host.Report;
using Xunit;

namespace LoggerBox.Host.Tests.Report;

public class FigureTests
{
    [Theory]
    [InlineData(158.44, "psi", "158.4")]
    [InlineData(1092.4, "kPa", "1092")]
    [InlineData(10.924, "bar", "10.92")]
    [InlineData(2003.4, "rpm", "2003")]
    [InlineData(-0.04, "psi", "0.0")]
    [InlineData(-0.06, "psi", "-0.1")]
    public void A_figure_has_the_places_that_its_instrument_deserves(double value, string unit, string expected) =>
        Assert.Equal(expected, Figure.Of(value, unit));

    [Theory]
    [InlineData(64.0, 76.0, "64.0 to 76.0")]
    [InlineData(64.0, null, "at least 64.0")]
    [InlineData(null, 76.0, "at most 76.0")]
    [InlineData(null, null, "no limit given")]
    public void A_limit_says_which_side_is_open(double? min, double? max, string expected) =>
        Assert.Equal(expected, Figure.Limit(min, max, "psi"));

    [Fact]
    public void A_file_that_cannot_be_written_leaves_nothing_and_says_where()
    {
        string folder = Directory.CreateTempSubdirectory("loggerbox").FullName;
        string taken = Path.Combine(folder, "taken");
        Directory.CreateDirectory(taken);
        var error = Assert.Throws<UserErrorException>(() => WholeFile.Write(taken, "x"));
        Assert.Contains(taken, error.Message, StringComparison.Ordinal);
        var longName = Assert.Throws<UserErrorException>(() => WholeFile.Write(Path.Combine(folder, new string('n', 300)), "x"));
        Assert.All((string[])[error.Message, longName.Message], said => Assert.DoesNotContain(".part", said, StringComparison.Ordinal));
        Assert.Throws<UserErrorException>(() => WholeFile.Write(Path.Combine(folder, "none", "r.html"), "x"));
        Assert.Equal([taken], Directory.GetFileSystemEntries(folder));
        Directory.Delete(folder, recursive: true);
    }
}
