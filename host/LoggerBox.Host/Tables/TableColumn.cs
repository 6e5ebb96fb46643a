using System.Collections.Generic;

namespace LoggerBox.Host.Tables;

/// <summary>A named column of a table; null where a cell is empty. What it holds is its type's affair.</summary>
public abstract record TableColumn(string Name);

/// <param name="Shown">How many places a number deserves where it is written as text; null: as many as tell it from every other.</param>
public sealed record NumberColumn(string Name, IReadOnlyList<double?> Values, Decimals? Shown = null) : TableColumn(Name);

public sealed record TextColumn(string Name, IReadOnlyList<string?> Values) : TableColumn(Name);
