using System;
using System.IO;
using System.Text;
using LoggerBox.Host.Traces;
using Xunit;

namespace LoggerBox.Host.Tests.Traces;

public class TraceRefusalTests
{
    [Theory]
    [InlineData("", 1, "empty")]
    [InlineData("# only a remark\n", 1, "empty")]
    [InlineData("time_s,rpm\n", 1, "no rows")]
    [InlineData("time_s,rpm\n# none\n\n", 3, "no rows")]
    [InlineData("rpm,main_psi\n0,1\n", 1, "no column time_s")]
    [InlineData("0.01,700\n0.02,700\n", 1, "no column time_s")]
    [InlineData("time_s,main_furlong\n0,1\n", 1, "main_furlong")]
    [InlineData("# x\ntime_s,main\n0,1\n", 2, "\"main\" has no known unit")]
    [InlineData("time_s,Main_psi\n0,1\n", 1, "Main_psi")]
    [InlineData("time_s,clutch_PSI\n0,1\n", 1, "clutch_PSI")]
    [InlineData("time_ms,rpm\n0,1\n", 1, "name it time_s")]
    [InlineData("time_s,oil_F\n0,1\n", 1, "name it oil_C")]
    [InlineData("time_s,RPM\n0,1\n", 1, "name it rpm")]
    [InlineData("time_s,rpm,rpm\n0,1,1\n", 1, "rpm is there twice")]
    [InlineData("time_s,main_psi,main_bar\n0,1,1\n", 1, "main_psi and main_bar")]
    [InlineData("time_s,\"rpm\n0,1\n", 1, "quote")]
    [InlineData("time_s,rpm\n0.1,700\n0.2,700\n0.15,700\n", 4, "goes back")]
    [InlineData("time_s,rpm\n0.1,700\n# x\n0.1,700\n", 4, "stands still")]
    [InlineData("time_s,rpm\n0.1,700\n0.1000001,700\n", 3, "stands still")]
    [InlineData("time_s,rpm\n,700\n", 2, "time_s is empty")]
    [InlineData("time_s,rpm\n0,fast\n", 2, "rpm is \"fast\"")]
    [InlineData("time_s,rpm\n0,NaN\n", 2, "no number")]
    [InlineData("time_s,rpm\n0,inf\n", 2, "no number")]
    [InlineData("time_s,rpm\n0,Infinity\n", 2, "no number")]
    [InlineData("time_s,rpm\n0,1e999\n", 2, "no number")]
    [InlineData("time_s,rpm\n0,--5\n", 2, "no number")]
    [InlineData("time_s,rpm\n0,0x10\n", 2, "no number")]
    [InlineData("time_s,rpm\n0,-1\n", 2, "outside any sensible range")]
    [InlineData("time_s,rpm\n0,99999\n", 2, "outside any sensible range")]
    [InlineData("time_s,main_psi\n0,1\n1,99999\n", 3, "outside any sensible range")]
    [InlineData("time_s,main_bar\n0,-5000\n", 2, "outside any sensible range")]
    [InlineData("time_s,oil_C\n0,900\n", 2, "outside any sensible range")]
    [InlineData("time_s\n1e30\n", 2, "outside any sensible range")]
    [InlineData("time_s,gear\n0,N\n1,X\n", 3, "gear \"X\"")]
    [InlineData("time_s,gear\n0,n\n", 2, "gear \"n\"")]
    [InlineData("time_s,step\n0,jump\n", 2, "step \"jump\"")]
    [InlineData("time_s,rpm,gear\n0,700,N\n1,700\n", 3, "too short: it has 2 cells, the first line names 3")]
    [InlineData("time_s,rpm\n0,700,5\n", 2, "too long")]
    [InlineData("time_s,rpm\n0,\"700\n1,700\n", 2, "quote")]
    [InlineData("time_s,rpm\n0,7\"00\n", 2, "quote")]
    [InlineData("time_s,rpm\n0,\"70\"0\n", 2, "quote")]
    [InlineData("time_s,note\r\n0,\"a\r\nb\"\r\n", 2, "quote")]
    public void What_cannot_be_right_is_refused_with_its_line(string text, int line, string saying)
    {
        var error = Assert.Throws<UserErrorException>(() => TraceText.Read(text));
        Assert.StartsWith($"t.csv, line {line}: ", error.Message, StringComparison.Ordinal);
        Assert.Contains(saying, error.Message, StringComparison.Ordinal);
        Assert.False(error.Usage);
    }

    [Fact]
    public void A_loop_current_without_its_range_is_an_error_of_the_command_line()
    {
        var error = Assert.Throws<UserErrorException>(() => TraceText.Read("time_s,clutch_mA\n0,4\n"));
        Assert.True(error.Usage);
        Assert.Contains("--range-clutch", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_column_of_the_wrong_unit_does_not_pass_as_loop_current() =>
        Assert.Throws<UserErrorException>(() => TraceText.Read("time_s,main_mA\n0,150\n", source => source with { RangeMain = ChannelRange.Parse("0..500psi") }));

    [Theory]
    [InlineData(new byte[] { 0xFF, 0xFE, (byte)'t', 0 })]
    [InlineData(new byte[] { (byte)'t', 0, (byte)'i' })]
    public void Text_of_another_encoding_is_named(byte[] bytes) =>
        Assert.Contains("UTF-8", Assert.Throws<UserErrorException>(() => TraceText.Read(bytes)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_file_that_cannot_be_read_is_named()
    {
        using var folder = new TemporaryFolder();
        foreach (string path in new[] { folder.File("none.csv"), folder.Path })
        {
            Assert.Contains(path, Assert.Throws<UserErrorException>(() => TraceReader.Read(new TraceSource(path))).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Control_characters_of_a_strange_file_do_not_reach_the_message()
    {
        string cell = "\u001b[2J" + new string('x', 5000);
        var error = Assert.Throws<UserErrorException>(() => TraceText.Read(Encoding.UTF8.GetBytes($"time_s,rpm\n0,{cell}\n")));
        Assert.DoesNotContain('\u001b', error.Message);
        Assert.True(error.Message.Length < 400);
    }
}
