using System;
using System.IO;
using LoggerBox.Capture.Storage;

namespace LoggerBox.TruckSimulator.Storage;

/// <summary>The virtual logger's card: one file that survives a restart, and a killed process at any moment.</summary>
public sealed class FileStore : IRecordStore, IDisposable
{
    private readonly FileStream file;

    /// <summary>Opens the file, or makes it. Throws as <see cref="FileStream"/> does where it cannot.</summary>
    public FileStore(string path, long capacity)
    {
        // Unbuffered: what Append returned from is with the operating system, which a killed process does not take along.
        file = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.Read, bufferSize: 0);
        Capacity = Math.Max(capacity, file.Length);
    }

    public long Capacity { get; }

    public long Length => file.Length;

    public int Read(long offset, byte[] buffer, int bufferOffset, int count)
    {
        file.Position = offset;
        return file.ReadAtLeast(buffer.AsSpan(bufferOffset, count), count, throwOnEndOfStream: false);
    }

    public bool Append(byte[] buffer, int offset, int count)
    {
        if (count > Capacity - file.Length)
        {
            return false;
        }

        try
        {
            file.Position = file.Length;
            file.Write(buffer, offset, count);
            return true;
        }
        catch (IOException)
        {
            return false;
        }
    }

    public void Truncate(long length)
    {
        if (length < file.Length)
        {
            file.SetLength(length);
        }
    }

    public void Dispose() => file.Dispose();
}
