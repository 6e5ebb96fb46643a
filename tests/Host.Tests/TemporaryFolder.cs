using System;
using System.IO;

namespace LoggerBox.Host.Tests;

/// <summary>A folder of one test, gone when the test is over.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("loggerbox-").FullName;

    public string File(string name) => System.IO.Path.Combine(Path, name);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
