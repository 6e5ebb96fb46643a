using System;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using Xunit;

namespace LoggerBox.SelfTest.Tests;

public class SelfTestTests
{
    private const string CoreLibrary = "nanoframework.corelibrary/1.17.11/lib";

    [Fact]
    public void On_this_computer_every_case_passes()
    {
        string[] lines = SelfTestProgram.OnThisComputer();
        Match last = Regex.Match(lines[^1], "^PASS ([0-9]+)/([0-9]+)$");
        Assert.True(last.Success, string.Join('\n', lines));
        Assert.Equal(last.Groups[2].Value, last.Groups[1].Value);
        Assert.Equal(int.Parse(last.Groups[2].ValueSpan), lines.Count(line => Regex.IsMatch(line, "^[a-z ]+: [0-9A-F]{8}( of [0-9]+ records)?, passed$")));
    }

    [InterpreterFact]
    public void On_the_interpreter_the_same_lines_come_out()
    {
        string folder = Directory.CreateTempSubdirectory("loggerbox-self-test-").FullName;
        try
        {
            string interpreter = Environment.GetEnvironmentVariable(InterpreterFactAttribute.InterpreterName)!;
            Assert.Equal(SelfTestProgram.OnThisComputer(), SelfTestProgram.OnTheInterpreter(interpreter, Processed(folder)));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>The files that the interpreter loads, those that others need first.</summary>
    private static string[] Processed(string folder)
    {
        string cache = Environment.GetEnvironmentVariable("NUGET_PACKAGES")
            ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
        string core = Path.Combine(cache, CoreLibrary, "mscorlib");
        string processor = Environment.GetEnvironmentVariable(InterpreterFactAttribute.ProcessorName)!;
        string[] hints = ["-loadHints", "mscorlib", core + ".dll"];
        string[] files = [core + ".pe"];
        foreach (string name in new[] { "LoggerBox.Protocol", "LoggerBox.Capture", "LoggerBox.SelfTest" })
        {
            string assembly = SelfTestProgram.ForTheLogger(name);
            string file = Path.Combine(folder, name + ".pe");
            string said = SelfTestProgram.Run(processor, [.. hints, "-parse", assembly, "-compile", file, "false"]);
            Assert.True(File.Exists(file), said);
            hints = [.. hints, "-loadHints", name, assembly];
            files = [.. files, file];
        }

        return files;
    }
}
