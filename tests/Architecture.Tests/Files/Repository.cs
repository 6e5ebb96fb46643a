using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;

namespace LoggerBox.Architecture.Tests.Files;

/// <summary>The clone that the tests were built in.</summary>
internal static class Repository
{
    private static readonly string[] MadeByTools = [".git", ".vs", ".vscode", "bin", "obj", "out", "TestResults"];

    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>Debug or Release, as these tests were built.</summary>
    public static string Configuration { get; } = new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;

    /// <summary>Files under version control, relative to the root with forward slashes; without git, all files that no tool made.</summary>
    public static IReadOnlyList<string> Files { get; } = TrackedFiles() ?? FilesOnDisk();

    public static string PathOf(string relative) => Path.Combine(Root, relative);

    public static string Text(string relative) => File.ReadAllText(PathOf(relative));

    private static string FindRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "LoggerBox.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("LoggerBox.sln is in no folder above the tests.");
    }

    private static List<string>? TrackedFiles()
    {
        // Another user's clone (a container that runs as root) is read all the same.
        var start = new ProcessStartInfo("git", ["-c", "safe.directory=*", "-C", Root, "ls-files", "-z"]) { RedirectStandardOutput = true, RedirectStandardError = true };
        try
        {
            using Process git = Process.Start(start)!;
            git.ErrorDataReceived += (_, _) => { };
            git.BeginErrorReadLine();
            string output = git.StandardOutput.ReadToEnd();
            git.WaitForExit();
            var files = output.Split('\0', StringSplitOptions.RemoveEmptyEntries).Where(file => File.Exists(PathOf(file))).ToList();
            return git.ExitCode == 0 && files.Count > 0 ? files : null;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }

    private static List<string> FilesOnDisk() => Directory
        .EnumerateFiles(Root, "*", SearchOption.AllDirectories)
        .Select(file => Path.GetRelativePath(Root, file).Replace('\\', '/'))
        .Where(file => !file.Split('/').Any(MadeByTools.Contains))
        .ToList();
}
