using System;
using System.IO;

namespace LoggerBox.Protocol.Tests;

/// <summary>The working copy that the tests were built in.</summary>
public static class Repository
{
    public static string Root { get; } = FindRoot();

    private static string FindRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder != null && !File.Exists(Path.Combine(folder.FullName, "LoggerBox.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests run outside a working copy.");
    }
}
