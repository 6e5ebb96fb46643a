using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.Host.DataSheets;

namespace LoggerBox.Host.Traces;

/// <summary>Which column of a foreign recording is which reading. The unit is that of the reading's name.</summary>
public sealed class ColumnMap
{
    private readonly Dictionary<string, TraceHeaderColumn> targets = new(StringComparer.Ordinal);

    private ColumnMap()
    {
    }

    /// <param name="path">A file of lines <c>rpm = "Engine speed"</c> (TOML); null for none.</param>
    /// <param name="words">As on the command line, <c>rpm=Engine speed</c>; one takes the place of the file's.</param>
    /// <returns>Null where nothing was said.</returns>
    /// <exception cref="UserErrorException">A reading that is none, or one said twice: file and line, or a usage error.</exception>
    public static ColumnMap? Of(string? path, IReadOnlyList<string> words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var map = new ColumnMap();
        foreach (string word in words)
        {
            int equals = word.IndexOf('=', StringComparison.Ordinal);
            if (equals <= 0 || equals == word.Length - 1)
            {
                throw new UserErrorException($"--map {Excerpt.Of(word)} says nothing: write the reading, =, and the column's name, for example --map rpm=\"Engine speed\".", usage: true);
            }

            map.Add(word[..equals].Trim(), word[(equals + 1)..].Trim(), what => new UserErrorException("--map " + what, usage: true));
        }

        if (path is not null)
        {
            map.AddFile(path);
        }

        return map.targets.Count == 0 ? null : map;
    }

    internal TraceHeaderColumn? TargetOf(string source) => targets.GetValueOrDefault(source);

    internal bool Gives(TraceQuantity quantity) => targets.Values.Any(target => target.Quantity == quantity);

    /// <summary>The first column that was spoken of and is not there; null where all are.</summary>
    internal string? NotAmong(IReadOnlyList<TraceHeaderColumn> columns) => targets.Keys.FirstOrDefault(source => columns.All(column => column.Name != source));

    private void AddFile(string path)
    {
        string name = Path.GetFileName(path);
        var findings = new FindingList();
        SheetTable? table = TomlTree.Read(DataSheetReader.Text(path), findings);
        if (findings.InOrder.Count > 0)
        {
            throw new UserErrorException($"{name}, line {findings.InOrder[0].Line}: {findings.InOrder[0].Text}");
        }

        TraceQuantity[] said = [.. targets.Values.Select(target => target.Quantity)];
        foreach (SheetEntry entry in table!.Entries.OrderBy(entry => entry.Line))
        {
            UserErrorException Refused(string what) => new($"{name}, line {entry.Line}: {what}");
            if (entry.Value is not string source || source.Trim().Length == 0)
            {
                throw Refused($"{Excerpt.Of(entry.Key)} needs the name of a column in quotes, for example rpm = \"Engine speed\".");
            }

            if (!(TraceNames.Target(entry.Key) is TraceHeaderColumn target && said.Contains(target.Quantity)))
            {
                Add(entry.Key, source.Trim(), Refused);
            }
        }
    }

    private void Add(string reading, string source, Func<string, UserErrorException> refused)
    {
        TraceHeaderColumn target = TraceNames.Target(reading) ?? throw refused($"{Excerpt.Of(reading)} is no reading; known are {TraceNames.Targets}.");
        if (targets.Values.FirstOrDefault(other => other.Quantity == target.Quantity) is TraceHeaderColumn twice)
        {
            throw refused($"{reading}: {(twice.Name == reading ? "it was said already" : $"{twice.Name} is the same reading")}; say one column for it.");
        }

        if (!targets.TryAdd(Excerpt.Of(source), target))
        {
            throw refused($"{reading}: the column \"{Excerpt.Of(source)}\" was said to be {targets[Excerpt.Of(source)].Name} already; a column is one reading.");
        }
    }
}
