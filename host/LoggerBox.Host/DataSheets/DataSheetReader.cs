using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Security.Cryptography;
using System.Text;
using LoggerBox.Host.Units;

namespace LoggerBox.Host.DataSheets;

/// <summary>Reads a truck's data sheet (TOML 1.0). A sheet with one error is refused whole: half a sheet would judge half a truck.</summary>
public static class DataSheetReader
{
    private const long LargestFileBytes = 1 << 20;

    /// <exception cref="UserErrorException">The file cannot be read, or something in it is refused: names file and line.</exception>
    public static DataSheet Read(string path) => Parse(ReadText(path), Path.GetFileName(path));

    /// <param name="fileName">Name to show in messages and in the judgement.</param>
    public static DataSheet Parse(string text, string fileName)
    {
        var findings = new FindingList();
        DataSheet sheet = Build(text, fileName, findings);
        SheetFinding[] errors = [.. findings.InOrder.Where(finding => finding.Level == FindingLevel.Error)];
        if (errors.Length == 0)
        {
            return sheet;
        }

        string more = errors.Length == 1 ? "" : $" There {(errors.Length == 2 ? "is 1 more error" : $"are {errors.Length - 1} more errors")}: `loggerbox sheet check` lists them all.";
        throw new UserErrorException($"{fileName}, line {errors[0].Line}: {errors[0].Text}{more}");
    }

    /// <summary>Everything that is wrong or doubtful, in order of lines; empty for a sheet without fault.</summary>
    /// <exception cref="UserErrorException">The file cannot be read at all.</exception>
    public static IReadOnlyList<SheetFinding> Check(string path) => CheckText(ReadText(path), Path.GetFileName(path));

    /// <summary>The same of a text that is in no file yet.</summary>
    public static IReadOnlyList<SheetFinding> CheckText(string text, string fileName)
    {
        var findings = new FindingList();
        Build(text, fileName, findings);
        return findings.InOrder;
    }

    /// <summary>What a sheet's file says, without reading it as a sheet.</summary>
    /// <exception cref="UserErrorException">The file cannot be read at all.</exception>
    public static string Text(string path) => ReadText(path);

    /// <summary>Which version of a sheet a text is: twelve digits, the same wherever the text is kept. The ends of lines do not matter.</summary>
    public static string VersionOf(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string plain = text.TrimStart('\uFEFF').ReplaceLineEndings("\n");
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(plain)))[..12];
    }

    private static DataSheet Build(string text, string fileName, FindingList findings)
    {
        SheetTable? table = TomlTree.Read(text, findings);
        if (table is null)
        {
            return new DataSheet { FileName = fileName };
        }

        if (table.Entries.Count == 0)
        {
            findings.Error(1, "the data sheet is empty; it needs at least [truck] and the limits that the manual gives.");
            return new DataSheet { FileName = fileName };
        }

        DataSheet sheet = SheetSections.Read(new TableReader(table, findings), fileName, VersionOf(text));
        if (!findings.HasErrors)
        {
            SheetDoubts.Find(sheet, findings);
        }

        return sheet;
    }

    private static string ReadText(string path)
    {
        try
        {
            if (Directory.Exists(path))
            {
                throw new UserErrorException($"{path} is a folder: name the data sheet in it.");
            }

            if (new FileInfo(path) is { Exists: true, Length: > LargestFileBytes })
            {
                throw new UserErrorException($"{path} is larger than a data sheet can be (1 MB); check that it is the right file.");
            }

            byte[] bytes = LimitedFile.Read(path);
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            throw new UserErrorException($"{path} is no text in UTF-8; save it as UTF-8 in a text editor and try again.");
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new UserErrorException($"The data sheet {path} cannot be read: {exception.Message} Check its path and that you may read it.");
        }
    }
}
