using System.Collections.Generic;
using System.Text.RegularExpressions;
using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace LoggerBox.Host.DataSheets;

/// <summary>Turns TOML text into a <see cref="SheetTable"/>; syntax errors become findings with their line.</summary>
internal static partial class TomlTree
{
    /// <returns>Null where the text is no valid TOML.</returns>
    public static SheetTable? Read(string text, FindingList findings)
    {
        DocumentSyntax document;
        try
        {
            document = SyntaxParser.Parse(text, sourceName: null, validate: true);
        }
        catch (TomlException exception)
        {
            findings.Error((exception.Line ?? 0) + 1, "not valid TOML: " + Excerpt.Of(exception.Message));
            return null;
        }

        if (document.HasErrors)
        {
            Report(document.Diagnostics, text, findings);
            return null;
        }

        var root = new SheetTable("", 1, inline: false);
        foreach (KeyValueSyntax pair in document.KeyValues)
        {
            AddPair(root, pair, findings);
        }

        foreach (TableSyntaxBase header in document.Tables)
        {
            SheetTable? table = OpenHeader(root, header, findings);
            foreach (KeyValueSyntax pair in header.Items)
            {
                if (table is not null)
                {
                    AddPair(table, pair, findings);
                }
            }
        }

        return root;
    }

    /// <summary>A syntax error makes the parser stumble over what follows, so only the first one is told; keys given twice are told one by one.</summary>
    private static void Report(DiagnosticsBag diagnostics, string text, FindingList findings)
    {
        foreach (DiagnosticMessage diagnostic in diagnostics)
        {
            int line = diagnostic.Span.Start.Line + 1;
            Match twice = GivenTwice().Match(diagnostic.Message);
            if (!twice.Success)
            {
                (int place, string? advice) = TomlSlips.Find(text, line);
                findings.Error(place, advice is null ? $"not valid TOML: {Excerpt.Of(diagnostic.Message.Trim())}." : $"not valid TOML: {advice}");
                return;
            }

            findings.Error(line, $"{Excerpt.Of(twice.Groups[1].Value)} is given twice; it stands in line {twice.Groups[2].Value} already.");
        }
    }

    [GeneratedRegex(@"^The key `(.+?)` is already defined at \((\d+),")]
    private static partial Regex GivenTwice();

    private static SheetTable? OpenHeader(SheetTable root, TableSyntaxBase header, FindingList findings)
    {
        int line = header.Span.Start.Line + 1;
        List<string> names = Names(header.Name!);
        SheetTable? parent = Descend(root, names, line, findings);
        string last = names[^1];
        if (parent is null)
        {
            return null;
        }

        var table = new SheetTable(parent.PathOf(last), line, inline: false);
        object? existing = parent.Find(last)?.Value;
        if (header is TableArraySyntax)
        {
            if (existing is List<SheetTable> rows)
            {
                rows.Add(table);
            }
            else if (!parent.Add(new SheetEntry(last, line, new List<SheetTable> { table })))
            {
                findings.Error(line, $"{Excerpt.Of(table.Path)} is given twice, once as a list of rows.");
            }

            return table;
        }

        if (existing is SheetTable opened)
        {
            return opened;
        }

        return Added(parent, new SheetEntry(last, line, table), findings) ? table : null;
    }

    private static void AddPair(SheetTable table, KeyValueSyntax pair, FindingList findings)
    {
        int line = pair.Span.Start.Line + 1;
        List<string> names = Names(pair.Key!);
        SheetTable? parent = Descend(table, names, line, findings);
        if (parent is not null)
        {
            Added(parent, new SheetEntry(names[^1], line, Value(pair.Value!, parent.PathOf(names[^1]), line, findings)), findings);
        }
    }

    private static bool Added(SheetTable parent, SheetEntry entry, FindingList findings)
    {
        if (parent.Add(entry))
        {
            return true;
        }

        findings.Error(entry.Line, $"{Excerpt.Of(parent.PathOf(entry.Key))} is given twice; it stands in line {parent.Find(entry.Key)!.Line} already.");
        return false;
    }

    /// <summary>Opens the tables that a dotted key or header passes through; a list of rows is entered at its last row.</summary>
    private static SheetTable? Descend(SheetTable table, List<string> names, int line, FindingList findings)
    {
        for (int i = 0; i < names.Count - 1; i++)
        {
            string name = names[i];
            switch (table.Find(name)?.Value)
            {
                case null:
                    var opened = new SheetTable(table.PathOf(name), line, inline: false);
                    table.Add(new SheetEntry(name, line, opened));
                    table = opened;
                    break;
                case SheetTable existing:
                    table = existing;
                    break;
                case List<SheetTable> rows:
                    table = rows[^1];
                    break;
                default:
                    findings.Error(line, $"{Excerpt.Of(table.PathOf(name))} is a single value already and cannot hold {Excerpt.Of(names[^1])}.");
                    return null;
            }
        }

        return table;
    }

    private static object Value(ValueSyntax value, string path, int line, FindingList findings)
    {
        switch (value)
        {
            case IntegerValueSyntax integer:
                return (double)integer.Value;
            case FloatValueSyntax real:
                return real.Value;
            case BooleanValueSyntax flag:
                return flag.Value;
            case StringValueSyntax text:
                return text.Value ?? "";
            case InlineTableSyntax inline:
                var table = new SheetTable(path, line, inline: true);
                foreach (InlineTableItemSyntax item in inline.Items)
                {
                    AddPair(table, item.KeyValue!, findings);
                }

                return table;
            case ArraySyntax:
                return new SheetOddity("a list");
            default:
                return new SheetOddity("a date or time");
        }
    }

    private static List<string> Names(KeySyntax key)
    {
        var names = new List<string> { Name(key.Key) };
        foreach (DottedKeyItemSyntax dotted in key.DotKeys)
        {
            names.Add(Name(dotted.Key));
        }

        return names;
    }

    private static string Name(BareKeyOrStringValueSyntax? part) => part switch
    {
        BareKeySyntax bare => bare.Key?.Text ?? "",
        StringValueSyntax quoted => quoted.Value ?? "",
        _ => "",
    };
}
