using System;
using System.IO;
using Xunit;

namespace LoggerBox.SelfTest.Tests;

/// <summary>
/// A test that needs the platform's interpreter (LOGGERBOX_NANOCLR, its host program) and its metadata processor (LOGGERBOX_MDP, a program
/// or a .dll). Neither is a package: both are built from public sources, see hardware-notes/bench-log.md.
/// </summary>
public sealed class InterpreterFactAttribute : FactAttribute
{
    public const string InterpreterName = "LOGGERBOX_NANOCLR";
    public const string ProcessorName = "LOGGERBOX_MDP";

    public InterpreterFactAttribute() => Skip = Missing(InterpreterName) ?? Missing(ProcessorName);

    private static string? Missing(string name) => Environment.GetEnvironmentVariable(name) is not { Length: > 0 } path
        ? $"{name} names no program: the interpreter's run is left out."
        : File.Exists(path) ? null : $"{name} names {path}, which is not there.";
}
