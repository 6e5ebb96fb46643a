using System;
using System.IO;

namespace LoggerBox.Fuzz;

/// <summary>Files of a target, in the memory's file system where there is one: a disk is not what is tested.</summary>
internal sealed class ScratchFolder : IDisposable
{
    private const string MemoryFolder = "/dev/shm";

    private readonly string folder = Path.Combine(Directory.Exists(MemoryFolder) ? MemoryFolder : Path.GetTempPath(), $"loggerbox-{Guid.NewGuid():N}");

    public ScratchFolder() => Directory.CreateDirectory(folder);

    public string File(string name) => Path.Combine(folder, name);

    /// <summary>A file of these bytes, and nothing left beside it of the one before.</summary>
    public string File(string name, byte[] content)
    {
        Clear();
        string path = File(name);
        System.IO.File.WriteAllBytes(path, content);
        return path;
    }

    public void Clear()
    {
        foreach (string path in Directory.GetFiles(folder))
        {
            System.IO.File.Delete(path);
        }
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);
}
