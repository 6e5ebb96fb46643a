using System;
using System.Diagnostics;
using System.IO;
using System.Linq;

namespace LoggerBox.SelfTest.Tests;

/// <summary>The self-test as it was built: for this computer and for the logger.</summary>
internal static class SelfTestProgram
{
    private const string FirstWords = "LoggerBox self-test";

    private static readonly string Root = FindRoot();

    /// <summary>Its lines up to PASS or FAIL, run by .NET.</summary>
    public static string[] OnThisComputer() => Lines(Run("dotnet", Path.Combine(Folder("net10.0"), "LoggerBox.SelfTest.dll")));

    /// <summary>The same on the interpreter, from the platform's own form of the assemblies.</summary>
    public static string[] OnTheInterpreter(string interpreter, string[] files) => Lines(Run(interpreter, files));

    /// <summary>An assembly as it was compiled for the logger.</summary>
    public static string ForTheLogger(string name)
    {
        string path = Path.Combine(Folder("netnano1.0"), name);
        return File.Exists(path + ".dll") ? path + ".dll" : path + ".exe";
    }

    public static string Run(string program, params string[] words)
    {
        (string runner, string[] all) = Path.GetExtension(program) == ".dll" ? ("dotnet", [program, .. words]) : (program, words);
        ProcessStartInfo start = new(runner, all) { RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return output;
    }

    private static string[] Lines(string output)
    {
        string[] lines = [.. output.ReplaceLineEndings("\n").Split('\n').SkipWhile(line => !line.StartsWith(FirstWords, StringComparison.Ordinal))];
        int last = Array.FindIndex(lines, line => line.StartsWith("PASS ", StringComparison.Ordinal) || line.StartsWith("FAIL ", StringComparison.Ordinal));
        return last < 0 ? throw new InvalidDataException("The self-test did not come to its end:\n" + output) : lines[..(last + 1)];
    }

    private static string Folder(string framework) =>
        Path.Combine(Root, "firmware", "self-test", "bin", new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name, framework);

    private static string FindRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "LoggerBox.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("LoggerBox.sln is in no folder above the tests.");
    }
}
