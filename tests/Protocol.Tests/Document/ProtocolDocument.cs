using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;

namespace LoggerBox.Protocol.Tests.Document;

/// <summary>The tables of PROTOCOL.md, by the heading that they stand under.</summary>
public sealed class ProtocolDocument
{
    private readonly Dictionary<string, List<string[]>> tables = [];

    private ProtocolDocument()
    {
        string heading = "";
        foreach (string line in File.ReadLines(Path.Combine(Repository.Root, "shared-protocol", "PROTOCOL.md")))
        {
            if (line.StartsWith('#'))
            {
                heading = line.TrimStart('#', ' ');
            }
            else if (line.StartsWith('|') && !line.StartsWith("| ---", StringComparison.Ordinal))
            {
                string[] cells = line.Trim('|').Split('|').Select(cell => cell.Trim()).ToArray();
                (tables.TryGetValue(heading, out List<string[]>? rows) ? rows : tables[heading] = []).Add(cells);
            }
        }
    }

    public static ProtocolDocument Read() => new();

    public IEnumerable<string> Headings => tables.Keys;

    /// <summary>The rows below a heading's table head; the head's first cell is checked so that no other table is taken for it.</summary>
    public IReadOnlyList<string[]> Rows(string heading, string firstCell)
    {
        List<string[]> rows = tables.TryGetValue(heading, out List<string[]>? found)
            ? found
            : throw new InvalidDataException($"PROTOCOL.md has no table under \"{heading}\".");
        return rows[0][0] == firstCell ? rows[1..] : throw new InvalidDataException($"The table under \"{heading}\" is another.");
    }

    public bool HasTable(string heading, string firstCell) => tables.TryGetValue(heading, out List<string[]>? rows) && rows[0][0] == firstCell;
}
