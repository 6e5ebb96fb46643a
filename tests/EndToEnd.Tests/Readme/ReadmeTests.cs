using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text;
using System.Text.RegularExpressions;
using System.Threading;
using Xunit;

namespace LoggerBox.EndToEnd.Tests.Readme;

/// <summary>The page's examples, done as its reader does them: from top to bottom, in one folder.</summary>
public partial class ReadmeTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    [Fact]
    public void What_the_examples_show_is_printed()
    {
        using var bench = new Workbench();
        var run = 0;
        foreach (Fence fence in Fence.OfPage())
        {
            if (fence.File is string name)
            {
                bench.Write(name, string.Concat(fence.Lines.Select(line => line + "\n")));
            }
            else if (fence.Kind == "console")
            {
                foreach (ConsoleExample example in ConsoleExample.Of(fence))
                {
                    string printed = example.Interrupted ? Interrupted(bench, example) : Printed(bench, example);
                    string? difference = ShownLines.Difference(example.Shown, printed);
                    Assert.True(difference is null, $"README.md, line {example.Number}: {difference}\nPrinted was:\n{printed}");
                    run++;
                }
            }
        }

        Assert.InRange(run, 5, int.MaxValue);
    }

    /// <summary>So that no example escapes: what is printed stands in a console, what is copied from `sh` shows no output.</summary>
    [Fact]
    public void Every_fence_says_what_it_holds()
    {
        foreach (Fence fence in Fence.OfPage())
        {
            string where = $"README.md, line {fence.Number}";
            Assert.True(fence.Kind is "console" or "sh" or "text" or "toml" or "csv", $"{where}: what is between these backticks?");
            Assert.True(fence.Kind is not ("toml" or "csv") || fence.File is not null, $"{where}: no name of the file");
            Assert.True(fence.Kind == "console" == fence.Lines[0].StartsWith(ConsoleExample.Prompt, StringComparison.Ordinal), $"{where}: a console begins with a prompt");
            Assert.True(fence.Kind != "console" || ConsoleExample.Of(fence).All(example => example.Words is not null), $"{where}: another program's command");
            Assert.True(fence.Kind != "sh" || fence.Lines.All(line => ConsoleExample.WordsOf(line) is not null || Others().IsMatch(line)), $"{where}: no command");
        }
    }

    [Fact]
    public void Every_option_that_the_page_names_is_one()
    {
        string help = string.Concat(AllHelp());
        IEnumerable<string> named = File.ReadAllLines(Fence.Page).Where(line => !Others().IsMatch(line)).SelectMany(line => Option().Matches(line).Select(option => option.Value));
        Assert.All(named.Distinct().Except(["--project"]), option => Assert.Matches($@"{option}(?![\w-])", help));
    }

    private static string Printed(Workbench bench, ConsoleExample example)
    {
        CommandResult result = LoggerBoxCommand.RunIn(bench.At(""), example.Words);
        return result.Out + result.Error;
    }

    private static string Interrupted(Workbench bench, ConsoleExample example)
    {
        using Process process = LoggerBoxCommand.StartIn(bench.At(""), example.Words);
        using var shown = new CountdownEvent(example.Shown.Length);
        var output = new StringBuilder();
        var error = new StringBuilder();
        process.OutputDataReceived += (_, line) => Take(line.Data, output, shown);
        process.ErrorDataReceived += (_, line) => Take(line.Data, error, shown);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        bool enough = shown.Wait(Patience);
        Interrupt(process);
        if (!process.WaitForExit(Patience))
        {
            process.Kill();
            Assert.Fail($"README.md, line {example.Number}: Ctrl-C did not end it");
        }

        process.WaitForExit();
        Assert.True(enough, $"README.md, line {example.Number}: less was printed than is shown\n{output}{error}");
        return $"{output}{error}";
    }

    private static void Take(string? line, StringBuilder to, CountdownEvent shown)
    {
        if (line is not null)
        {
            to.Append(line).Append('\n');
            if (!shown.IsSet)
            {
                shown.Signal();
            }
        }
    }

    // A terminate signal in place of Ctrl-C: a run in the background of a script has that switched off, and its children too.
    private static void Interrupt(Process process)
    {
        using Process interrupt = Process.Start("kill", ["-TERM", process.Id.ToString(CultureInfo.InvariantCulture)]);
        interrupt.WaitForExit();
    }

    private static IEnumerable<string> AllHelp(params string[] verb)
    {
        string help = LoggerBoxCommand.Run([.. verb, "--help"]).Expect(0).Out;
        string[] halves = help.Split("\nCommands:\n");
        IEnumerable<string> beneath = halves.Length == 1 ? [] : VerbBeneath().Matches(halves[1]).Select(match => match.Groups[1].Value);
        return beneath.SelectMany(name => AllHelp([.. verb, name])).Prepend(help);
    }

    /// <summary>Lines that another program is told.</summary>
    [GeneratedRegex("^(?:dotnet test|createuser|createdb) ")]
    private static partial Regex Others();

    [GeneratedRegex(@"(?<=[\s`(])--[a-z][a-z-]*")]
    private static partial Regex Option();

    [GeneratedRegex("^  ([a-z]+) ", RegexOptions.Multiline)]
    private static partial Regex VerbBeneath();
}
