using System;
using System.Collections.Generic;
using System.IO;
using LoggerBox.Capture.Storage;
using LoggerBox.Host;

namespace LoggerBox.App.Cards;

/// <summary>
/// The log on a card that was pulled from a logger, opened for reading only: it works on a write-protected card, and nothing on it is
/// ever changed. What the card does not give is counted, not thrown: the log goes on behind it.
/// </summary>
internal sealed class CardFile : IRecordStore, IDisposable
{
    /// <summary>The log's name in the card's folder.</summary>
    public const string LogName = "sessions.log";

    private readonly Stream file;
    private readonly HashSet<long> failedPages = [];

    /// <param name="file">Must know its length and where it is.</param>
    public CardFile(string folder, string path, Stream file)
    {
        Folder = folder;
        Path = path;
        this.file = file;
        Length = file.Length;
    }

    /// <summary>As the user named it.</summary>
    public string Folder { get; }

    public string Path { get; }

    /// <summary>A card's sector, and the page of every logger's log.</summary>
    public int PageLength => 512;

    public long Capacity => Length;

    public long Length { get; }

    /// <summary>Reads that the card failed. A page that failed once is not asked for again: some cards take seconds to say no.</summary>
    public int Failures { get; private set; }

    /// <summary>Why the last of them failed, in the system's words.</summary>
    public string Reason { get; private set; } = "";

    /// <exception cref="UserErrorException">It cannot be opened, is empty or no plain file.</exception>
    public static CardFile Open(string folder, string path)
    {
        try
        {
            if (PlainLength(path) == 0)
            {
                throw new UserErrorException(Messages.NoPlainLog(path));
            }

            // Others may go on with it: a virtual logger that still runs keeps its card.
            return new CardFile(folder, path, new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw new UserErrorException(Messages.CardClosed(path, error.Message));
        }
    }

    public int Read(long offset, byte[] buffer, int bufferOffset, int count)
    {
        if (offset < 0 || offset >= Length || failedPages.Contains(offset / PageLength))
        {
            return 0;
        }

        try
        {
            file.Position = offset;
            int wanted = (int)Math.Min(count, Length - offset);
            int read = file.ReadAtLeast(buffer.AsSpan(bufferOffset, wanted), wanted, throwOnEndOfStream: false);
            return read == wanted ? read : Failed(offset, Messages.CardShorter);
        }
        catch (IOException error)
        {
            return Failed(offset, error.Message);
        }
    }

    public bool Write(long offset, byte[] buffer, int bufferOffset, int count) => false;

    public void Dispose() => file.Dispose();

    /// <summary>The page is one that the card failed to give.</summary>
    public bool HasFailed(long page) => failedPages.Contains(page);

    /// <summary>
    /// Bytes of the file, or of what it links to, told without opening it: to open a pipe waits until somebody writes. Pipes, sockets and
    /// devices have none.
    /// </summary>
    public static long PlainLength(string path) => (File.ResolveLinkTarget(path, returnFinalTarget: true) as FileInfo ?? new FileInfo(path)).Length;

    private int Failed(long offset, string reason)
    {
        failedPages.Add(offset / PageLength);
        Failures++;
        Reason = reason.TrimEnd('.');
        return 0;
    }
}
