using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.Host.DataSheets;
using LoggerBox.Host.Tests.DataSheets;

namespace LoggerBox.Host.Tests.Report.Card;

/// <summary>The sheets that cards are made from here: the examples, one with every key, one with none, and one that wants to do harm.</summary>
internal static class CardSheets
{
    public const string HostileName = "<script>alert(1)</script>\\u202E ${x} \\\" ]]> 長い名前 ";

    public static DataSheet Example(string name) => DataSheetReader.Read(Path.Combine(Repository.Root, "examples", name));

    public static DataSheet Full => Parse(SampleSheet.Full);

    public static DataSheet Bare => Parse("[truck]\nname = \"\"\n");

    /// <summary>Everything that is free text, and much of it.</summary>
    public static DataSheet Hostile => Parse(
        $"[truck]\nname = \"{Long(HostileName)}\"\nsource = \"{Long(HostileName)}\"\n[engine]\nfuel = \"{Long("x")}\"\n[pressure]\nunit = \"kgfcm2\"\n[pressure.idle]\nmain = {{ min = 12.3456789 }}\n");

    /// <summary>Each clutch has its own port, and both directions may be stalled.</summary>
    public static DataSheet PerGear => Parse("[truck]\nname = \"t\"\n[ports]\nclutch = \"per-gear\"\n");

    public static IReadOnlyList<DataSheet> All =>
        [.. Repository.ExampleSheets.Select(path => DataSheetReader.Read(path)), Full, Bare, Hostile, PerGear];

    public static DataSheet Parse(string text) => DataSheetReader.Parse(text, "s.toml");

    private static string Long(string text) => string.Concat(Enumerable.Repeat(text, 15));
}
