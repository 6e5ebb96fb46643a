using System;
using System.IO;
using LoggerBox.Host.Archive;

namespace LoggerBox.Link.Tests.VirtualTime;

/// <summary>A real archive in a folder of its own, in the memory's file system where there is one: thousands of writes to a disk are not what is tested here.</summary>
internal sealed class ArchiveInMemory : IDisposable
{
    private const string MemoryFolder = "/dev/shm";

    private readonly string folder;

    public ArchiveInMemory()
    {
        folder = Path.Combine(Directory.Exists(MemoryFolder) ? MemoryFolder : Path.GetTempPath(), $"loggerbox-{Guid.NewGuid():N}");
        Directory.CreateDirectory(folder);
        File = ArchiveFile.Open(Path.Combine(folder, "archive.sqlite"));
    }

    public ArchiveFile File { get; }

    public void Dispose()
    {
        File.Dispose();
        Directory.Delete(folder, recursive: true);
    }
}
