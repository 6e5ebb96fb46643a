using System.Collections.Generic;

namespace LoggerBox.Host.DataSheets;

/// <summary>A table of the file with the lines its keys stand on; knows nothing of what the keys mean.</summary>
internal sealed class SheetTable(string path, int line, bool inline)
{
    private readonly Dictionary<string, SheetEntry> entries = new(System.StringComparer.Ordinal);

    /// <summary>"pressure.hold"; empty for the whole file.</summary>
    public string Path { get; } = path;

    public int Line { get; } = line;

    /// <summary>Written { ... } behind a key, not under a [header].</summary>
    public bool Inline { get; } = inline;

    public IReadOnlyCollection<SheetEntry> Entries => entries.Values;

    public SheetEntry? Find(string key) => entries.GetValueOrDefault(key);

    public bool Add(SheetEntry entry) => entries.TryAdd(entry.Key, entry);

    public string PathOf(string key) => Path.Length == 0 ? key : Path + "." + key;
}

/// <param name="Value">
/// double, string, bool, <see cref="SheetTable"/>, a list of them for [[header]] rows, or <see cref="SheetOddity"/>.
/// </param>
internal sealed record SheetEntry(string Key, int Line, object Value);

/// <summary>A value of a kind that no data sheet key takes.</summary>
/// <param name="Kind">What it is, for a sentence: "a list", "a date".</param>
internal sealed record SheetOddity(string Kind);
