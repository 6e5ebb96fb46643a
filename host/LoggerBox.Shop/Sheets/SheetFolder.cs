using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading;
using LoggerBox.Host;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Report;

namespace LoggerBox.Shop.Sheets;

/// <summary>The folder with the shop's data sheets. What gets into it has passed the check, and is there whole or not at all.</summary>
internal sealed class SheetFolder(string path)
{
    private readonly Lock gate = new();

    public IReadOnlyList<string> Names()
    {
        try
        {
            return Directory.Exists(path)
                ? [.. Directory.EnumerateFiles(path, "*" + SheetName.Ending).Select(file => Path.GetFileName(file)).Where(SheetName.IsGood).Order(StringComparer.OrdinalIgnoreCase)]
                : [];
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UserErrorException($"The folder {path} cannot be read ({error.Message.TrimEnd('.')}): name another with --sheets.");
        }
    }

    /// <exception cref="UserErrorException">There is no such sheet, or it cannot be read.</exception>
    public string Text(string name) => DataSheetReader.Text(Path.Combine(path, SheetName.Demand(name)));

    /// <param name="opened">The version that the text was made from; empty for a new sheet.</param>
    /// <exception cref="UserErrorException">The check finds an error, somebody else changed the sheet meanwhile, or it cannot be written.</exception>
    public void Save(string name, string text, string opened)
    {
        SheetName.Demand(name);
        if (SheetCheck.Of(text, name) is { IsGood: false } check)
        {
            throw new UserErrorException(check.Summary);
        }

        lock (gate)
        {
            MakeFolder();
            string file = Path.Combine(path, name);
            string there = File.Exists(file) ? DataSheetReader.VersionOf(DataSheetReader.Text(file)) : "";
            if (there != opened)
            {
                throw new UserErrorException(there.Length == 0
                    ? $"{name} is not there any more: copy your text, open a new sheet, and put it there."
                    : $"There is another {name}, or somebody changed it meanwhile: nothing was saved. Copy your text, open {name} again, and put your changes into it; or choose another name.");
            }

            WholeFile.Write(file, text);
        }
    }

    private void MakeFolder()
    {
        try
        {
            Directory.CreateDirectory(path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new UserErrorException($"The folder {path} cannot be made ({error.Message.TrimEnd('.')}): name another with --sheets.");
        }
    }
}
