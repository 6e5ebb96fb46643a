using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace LoggerBox.Host.DataSheets;

/// <summary>
/// Takes the known keys out of one table, each with its type and range. What is left when reading ends is an unknown key:
/// a misspelt limit must not silently leave a reading unjudged.
/// </summary>
internal sealed class TableReader(SheetTable table, FindingList findings)
{
    private const int LongestText = 1000;

    private readonly HashSet<string> known = new(StringComparer.Ordinal);

    public SheetTable Table { get; } = table;

    /// <summary>The table's name, fit for a sentence.</summary>
    public string Path => Excerpt.Of(Table.Path);

    public FindingList Findings { get; } = findings;

    public SheetEntry? Take(string key)
    {
        known.Add(key);
        return Table.Find(key);
    }

    public string? Text(string key)
    {
        SheetEntry? entry = Take(key);
        if (entry is null)
        {
            return null;
        }

        if (entry.Value is not string text)
        {
            Refuse(entry, $"is {Describe(entry.Value)} where a text in quotes belongs; write {key} = \"...\".");
            return null;
        }

        if (text.Length > LongestText || text.Any(letter => char.IsControl(letter) && letter is not ('\n' or '\r' or '\t')))
        {
            Refuse(entry, $"has control characters or more than {LongestText} letters; write a plain, short text.");
            return null;
        }

        return text.Trim();
    }

    public string? Choice(string key, params string[] allowed)
    {
        string? text = Text(key);
        if (text is null || allowed.Contains(text, StringComparer.Ordinal))
        {
            return text;
        }

        Refuse(Table.Find(key)!, $"is \"{Excerpt.Of(text)}\"; write {string.Join(" or ", allowed.Select(word => "\"" + word + "\""))}.");
        return null;
    }

    public bool? Flag(string key)
    {
        SheetEntry? entry = Take(key);
        switch (entry?.Value)
        {
            case null:
                return null;
            case bool flag:
                return flag;
            default:
                Refuse(entry, $"is {Describe(entry.Value)} where true or false belongs; write it without quotes.");
                return null;
        }
    }

    public double? Number(string key, QuantityRange range)
    {
        SheetEntry? entry = Take(key);
        if (entry is null)
        {
            return null;
        }

        if (entry.Value is not double number)
        {
            Refuse(entry, $"is {Describe(entry.Value)} where a number belongs; write the figure without quotes and unit.");
            return null;
        }

        if (!double.IsFinite(number))
        {
            Refuse(entry, $"is {Describe(number)} where a number belongs; write the figure, or leave the limit out.");
            return null;
        }

        if (!range.Contains(number))
        {
            Refuse(entry, $"is {Show(number)}, outside {Show(range.Lowest)} to {Show(range.Highest)} {range.Words}; look for a slip in the figure or in its unit.");
            return null;
        }

        return number;
    }

    public TableReader? Section(string key)
    {
        SheetEntry? entry = Take(key);
        switch (entry?.Value)
        {
            case null:
                return null;
            case SheetTable section:
                return new TableReader(section, Findings);
            default:
                Refuse(entry, $"is {Describe(entry.Value)} where a table [{Table.PathOf(key)}] belongs.");
                return null;
        }
    }

    public IEnumerable<TableReader> Rows(string key)
    {
        SheetEntry? entry = Take(key);
        switch (entry?.Value)
        {
            case null:
                return [];
            case List<SheetTable> rows:
                return rows.Select(row => new TableReader(row, Findings));
            default:
                Refuse(entry, $"is {Describe(entry.Value)} where rows under [[{Table.PathOf(key)}]] belong.");
                return [];
        }
    }

    /// <summary>Refuses every key that nobody asked for.</summary>
    public void RefuseTheRest()
    {
        foreach (SheetEntry entry in Table.Entries.Where(entry => !known.Contains(entry.Key)))
        {
            string meant = NearestKey.To(entry.Key, known) is string near ? $"write {near}, or one of" : "known here:";
            Refuse(entry, $"is no key of a data sheet; {meant} {string.Join(", ", known.Order(StringComparer.Ordinal))}.");
        }
    }

    /// <param name="text">The sentence after the key's name.</param>
    public void Refuse(SheetEntry entry, string text) => Findings.Error(entry.Line, $"{Excerpt.Of(Table.PathOf(entry.Key))} {text}");

    public static string Show(double number) => number.ToString("0.######", CultureInfo.InvariantCulture);

    private static string Describe(object value) => value switch
    {
        double number when double.IsNaN(number) => "nan (not a number)",
        double number when double.IsInfinity(number) => "inf (infinite)",
        double number => "the number " + Show(number),
        string text => $"the text \"{Excerpt.Of(text)}\"",
        bool flag => flag ? "true" : "false",
        SheetTable => "a table",
        SheetOddity oddity => oddity.Kind,
        _ => "a list of rows",
    };
}
