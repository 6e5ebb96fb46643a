using System;
using System.Diagnostics;
using System.IO;
using System.Linq;
using Xunit;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>
/// The program as a user whom permissions stop. Root they do not: there it runs as nobody, where the machine has the command for that and
/// nobody may execute the program.
/// </summary>
internal static class UnprivilegedUser
{
    private static readonly string[] AsNobody = Environment.IsPrivilegedProcess ? ["setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"] : [];

    /// <summary>Null: can be had here.</summary>
    public static string? Missing { get; } =
        OperatingSystem.IsWindows() ? "permissions here are those of Linux and macOS"
        : IsThere() ? null
        : "root is stopped by no permission, and nobody may not run the program here";

    public static CommandResult Run(params string[] words) => Execute([.. AsNobody, LoggerBoxCommand.Executable, .. words]);

    private static bool IsThere()
    {
        try
        {
            return Execute([.. AsNobody, LoggerBoxCommand.Executable, "--help"]).Status == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    private static CommandResult Execute(string[] words)
    {
        var start = new ProcessStartInfo(words[0], words.Skip(1)) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["HOME"] = Path.GetTempPath();
        using Process process = Process.Start(start)!;
        string output = process.StandardOutput.ReadToEnd();
        string error = process.StandardError.ReadToEnd();
        process.WaitForExit();
        return new CommandResult(process.ExitCode, output, error);
    }
}

/// <summary>A test in which permissions must stop somebody.</summary>
public sealed class UnprivilegedFactAttribute : FactAttribute
{
    public UnprivilegedFactAttribute() => Skip = UnprivilegedUser.Missing;
}
