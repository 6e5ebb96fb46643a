using System;
using System.IO;
using LoggerBox.Host.Tables;

namespace LoggerBox.Host.Traces;

/// <summary>The lines of a text file that count: no comments, no blank ones; knows the number of each. The rows of a Parquet file come as such lines.</summary>
internal ref struct SourceLines
{
    private const long LargestFileBytes = 1L << 30;

    private ReadOnlySpan<byte> rest;
    private readonly bool isTable;

    private SourceLines(string fileName, ReadOnlySpan<byte> bytes, bool isTable)
    {
        FileName = fileName;
        this.isTable = isTable;
        Length = bytes.Length;
        rest = bytes.StartsWith("\uFEFF"u8) ? bytes[3..] : bytes;
    }

    public string FileName { get; }

    /// <summary>Bytes of all lines.</summary>
    public int Length { get; }

    /// <summary>Bytes that are not read yet.</summary>
    public readonly int Left => rest.Length;

    /// <summary>From 1.</summary>
    public int Number { get; private set; }

    /// <summary>The line without its end.</summary>
    public ReadOnlySpan<byte> Current { get; private set; }

    /// <summary>No more lines than this are left.</summary>
    public readonly int AtMost => rest.Count((byte)'\n') + 1;

    /// <exception cref="UserErrorException">The file cannot be read or is no UTF-8 text.</exception>
    public static SourceLines Open(string path)
    {
        string fileName = Path.GetFileName(path);
        byte[] bytes = ReadBytes(path);
        if (ParquetTable.IsOne(bytes))
        {
            return new SourceLines(fileName, TableText.Of(ParquetTable.Read(bytes, fileName)), isTable: true);
        }

        if (bytes.AsSpan().StartsWith([(byte)0xFF, (byte)0xFE]) || bytes.AsSpan().StartsWith([(byte)0xFE, (byte)0xFF]) || bytes.AsSpan().Contains((byte)0))
        {
            throw new UserErrorException($"{fileName} is no text in UTF-8; save or export it as CSV in UTF-8 and try again.");
        }

        return new SourceLines(fileName, bytes, isTable: false);
    }

    public bool Next()
    {
        while (!rest.IsEmpty)
        {
            int end = rest.IndexOf((byte)'\n');
            ReadOnlySpan<byte> line = end < 0 ? rest : rest[..end];
            rest = end < 0 ? default : rest[(end + 1)..];
            Number++;
            Current = line.EndsWith("\r"u8) ? line[..^1] : line;
            if (!Current.StartsWith("#"u8) && !Current.Trim(" \t"u8).IsEmpty)
            {
                return true;
            }
        }

        return false;
    }

    public readonly UserErrorException Refused(string text) => new($"{FileName}, {Place}: {text}");

    /// <summary>Of a table the line of names is no row.</summary>
    private readonly string Place => !isTable ? $"line {Math.Max(1, Number)}" : Number > 1 ? $"row {Number - 1}" : "column names";

    private static byte[] ReadBytes(string path)
    {
        try
        {
            if (Directory.Exists(path))
            {
                throw new UserErrorException($"{path} is a folder: name the file in it.");
            }

            if (new FileInfo(path) is { Exists: true, Length: > LargestFileBytes })
            {
                throw new UserErrorException($"{path} is larger than 1 GB; cut the recording into sessions first.");
            }

            return LimitedFile.Read(path);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new UserErrorException($"{path} cannot be read: {exception.Message} Check its path and that you may read it.");
        }
    }
}
