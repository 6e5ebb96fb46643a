using System;
using System.IO;

namespace LoggerBox.Host;

/// <summary>A file read whole, and never more than it said it has: a device has no end, and a pipe may have none.</summary>
internal static class LimitedFile
{
    // Of what has no length, as a pipe: more than any trace or sheet that somebody sends through one.
    private const int LongestWithoutLength = 64 << 20;

    private const int Piece = 64 * 1024;

    /// <exception cref="UserErrorException">There is no end to it.</exception>
    /// <exception cref="IOException">It cannot be read; also <see cref="UnauthorizedAccessException"/> and what a wrong path throws.</exception>
    public static byte[] Read(string path)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        long length = file.CanSeek ? file.Length : 0;
        if (length > 0)
        {
            byte[] bytes = new byte[length];
            int read = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            return read == bytes.Length ? bytes : bytes[..read];
        }

        using MemoryStream gathered = new();
        byte[] piece = new byte[Piece];
        for (int read = file.Read(piece); read > 0; read = file.Read(piece))
        {
            gathered.Write(piece, 0, read);
            if (gathered.Length > LongestWithoutLength)
            {
                throw new UserErrorException($"{path} does not end ({LongestWithoutLength >> 20} MB were read of it): it is no file; name one.");
            }
        }

        return gathered.ToArray();
    }
}
