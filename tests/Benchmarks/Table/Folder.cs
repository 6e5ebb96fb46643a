using System;
using System.IO;

namespace LoggerBox.Benchmarks.Table;

/// <summary>A folder of its own for what a bench writes, gone with it.</summary>
internal sealed class Folder : IDisposable
{
    private readonly string path = Directory.CreateTempSubdirectory("loggerbox-bench-").FullName;

    public string File(string name) => Path.Combine(path, name);

    public void Dispose() => Directory.Delete(path, recursive: true);
}
