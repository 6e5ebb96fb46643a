using System;
using System.IO;
using System.Linq;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>A folder of its own for one test, gone afterwards.</summary>
internal sealed class Workbench : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("loggerbox-test-").FullName;

    public string Archive => At("archive.sqlite");

    public string At(string name) => Path.Combine(folder, name);

    public string Write(string name, string text)
    {
        File.WriteAllText(At(name), text);
        return At(name);
    }

    public string[] Files() => [.. Directory.GetFileSystemEntries(folder).Select(entry => Path.GetFileName(entry)).Order(StringComparer.Ordinal)];

    public void Dispose() => Directory.Delete(folder, recursive: true);
}
