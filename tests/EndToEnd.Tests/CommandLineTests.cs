using System;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

public class CommandLineTests
{
    [Theory]
    [InlineData("fly")]
    [InlineData("judge")]
    [InlineData("judge", "x.csv", "--unit", "furlong")]
    [InlineData("judge", "x.csv", "--colour")]
    [InlineData("job")]
    [InlineData("job", "new", "--oil", "900")]
    [InlineData("job", "new", "--hours", "NaN")]
    [InlineData("fetch")]
    [InlineData("demo", "--seed", "many")]
    [InlineData("simulate", "--speed", "slow")]
    [InlineData("report", "J1", "--out", "report.doc")]
    [InlineData("export", "S1", "--out", "trace.xls")]
    [InlineData("fetch", "--port", "tcp:nowhere")]
    public void A_wrong_command_line_is_status_2_and_a_sentence_on_standard_error(params string[] words)
    {
        CommandResult result = LoggerBoxCommand.Run(words);
        result.Refused(2);
        Assert.Empty(result.Out);
    }

    [Fact]
    public void A_word_that_is_no_verb_is_named() => LoggerBoxCommand.Run("fly").Refused(2, "'fly' is no verb");

    [Fact]
    public void Help_names_every_verb_and_is_a_result()
    {
        CommandResult help = LoggerBoxCommand.Run("--help").Expect(0);
        foreach (string verb in (string[])["demo", "simulate", "job", "ports", "fetch", "sessions", "judge", "report", "export", "import", "sheet", "plan"])
        {
            Assert.Contains($"  {verb} ", help.Out, StringComparison.Ordinal);
        }

        Assert.Empty(help.Error);
    }
}
