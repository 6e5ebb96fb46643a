using System;
using System.IO;
using LoggerBox.Capture.Storage;

namespace LoggerBox.TruckSimulator.Storage;

/// <summary>The virtual logger's card: one file that survives a restart, a killed process, and the computer's own power cut.</summary>
public sealed class FileStore : IRecordStore, IDisposable
{
    private readonly FileStream file;
    private long length;

    /// <summary>Opens the file, or makes it. Throws as <see cref="FileStream"/> does where it cannot.</summary>
    public FileStore(string path, long capacity)
    {
        file = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.Read, bufferSize: 0);
        length = file.Length;
        Capacity = Math.Max(capacity, length);
    }

    public int PageLength => 512;

    public long Capacity { get; }

    public long Length => length;

    public int Read(long offset, byte[] buffer, int bufferOffset, int count)
    {
        if (offset >= length)
        {
            return 0;
        }

        file.Position = offset;
        return file.ReadAtLeast(buffer.AsSpan(bufferOffset, count), count, throwOnEndOfStream: false);
    }

    public bool Write(long offset, byte[] buffer, int bufferOffset, int count)
    {
        if (count > Capacity - offset)
        {
            return false;
        }

        try
        {
            file.Position = offset;
            file.Write(buffer, bufferOffset, count);
            length = Math.Max(length, offset + count);

            // To the disk itself: the log counts what was written as safe from now on.
            file.Flush(flushToDisk: true);
            return true;
        }
        catch (IOException)
        {
            return false;
        }
    }

    public void Dispose() => file.Dispose();
}
