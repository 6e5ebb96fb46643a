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
    [InlineData("job", "new")]
    [InlineData("job", "correct", "J1", "--by", "Kim")]
    [InlineData("job", "correct", "J1", "--hours", "-1", "--by", "Kim")]
    [InlineData("job", "new", "--oil", "900")]
    [InlineData("job", "new", "--hours", "NaN")]
    [InlineData("fetch")]
    [InlineData("demo", "--seed", "many")]
    [InlineData("simulate", "--speed", "slow")]
    [InlineData("report", "J1", "--out", "report.doc")]
    [InlineData("export", "S1", "--out", "trace.xls")]
    [InlineData("fetch", "--port", "tcp:nowhere")]
    [InlineData("simulate", "--baud", "9")]
    [InlineData("simulate", "--baud", "often")]
    [InlineData("job", "add", "J1", "S1", "--as", "during")]
    public void A_wrong_command_line_is_status_2_and_a_sentence_on_standard_error(params string[] words)
    {
        CommandResult result = LoggerBoxCommand.Run(words);
        result.Refused(2);
        Assert.Empty(result.Out);
    }

    [Theory]
    [InlineData("WHAT", "judge", "")]
    [InlineData("--sheet", "judge", "x.csv", "--sheet", "")]
    [InlineData("--archive", "sessions", "--archive", "")]
    [InlineData("--card", "fetch", "--card", "")]
    [InlineData("--port", "fetch", "--port", "")]
    [InlineData("--out", "report", "J1", "--out", "")]
    [InlineData("FILE", "import", "")]
    [InlineData("FILE", "sheet", "check", "")]
    [InlineData("--store", "simulate", "--store", "")]
    [InlineData("--pulses", "judge", "x.csv", "--pulses", "")]
    public void An_empty_name_is_refused_by_what_it_was_for(string name, params string[] words) =>
        LoggerBoxCommand.Run(words).Refused(2, $"{name} was given an empty name");

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
