using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.Architecture.Tests.Metadata;
using Xunit;

namespace LoggerBox.Architecture.Tests.References;

/// <summary>Inside the host data goes one way too: the link puts what it fetches into the archive, judging reads recorded sessions, the report shows what was judged.</summary>
public class HostNamespaceTests
{
    private const string Root = "LoggerBox.Host.";

    /// <summary>For each folder the folders of the host that it must not know.</summary>
    private static readonly Dictionary<string, string[]> MustNotKnow = new()
    {
        ["Calibrating"] = ["Archive", "Comparing", "DataSheets", "Judging", "Link", "Live", "Report", "Sessions", "Subjects", "Traces"],
        ["Releasing"] = ["Archive", "Comparing", "DataSheets", "Judging", "Link", "Live", "Report", "Sessions", "Subjects", "Traces", "Units"],
        ["Units"] = ["Archive", "DataSheets", "Judging", "Link", "Report", "Sessions", "Subjects", "Traces"],
        ["DataSheets"] = ["Archive", "Judging", "Link", "Report", "Sessions", "Subjects", "Traces"],
        ["Sessions"] = ["Archive", "DataSheets", "Judging", "Link", "Report", "Subjects", "Traces"],
        ["Traces"] = ["Archive", "Judging", "Link", "Report", "Subjects"],
        ["Link"] = ["Judging", "Report", "Subjects", "Traces"],
        ["Archive"] = ["Link", "Report", "Subjects", "Traces"],
        ["Judging"] = ["Archive", "Comparing", "Link", "Report", "Subjects", "Traces"],
        ["Report"] = ["Archive", "Comparing", "Link", "Subjects", "Traces"],
        ["Comparing"] = ["Archive", "Link", "Subjects", "Traces"],
        ["Tables"] = ["Archive", "Comparing", "DataSheets", "Judging", "Link", "Live", "Report", "Sessions", "Subjects", "Traces", "Units"],
        ["Live"] = ["Archive", "Comparing", "Link", "Sessions", "Subjects", "Traces"],
        ["Subjects"] = ["Link", "Traces"],
    };

    /// <summary>Assemblies and the only place that may use them: a folder of the host.</summary>
    private static readonly Dictionary<string, string> OnlyIn = new()
    {
        ["Microsoft.Data.Sqlite"] = "Archive",
        ["Npgsql"] = "Archive",
        ["System.IO.Ports"] = "Link",
        ["Parquet"] = "Tables",
        ["Tomlyn"] = "DataSheets",
        ["MathNet.Numerics"] = "Judging",
        ["System.CommandLine"] = "no folder of the host",
        ["System.Console"] = "no folder of the host",
    };

    private static readonly IReadOnlyList<TypeScan> Types = AssemblyReader.Read(Path.Combine(AppContext.BaseDirectory, "LoggerBox.Host.dll")).Types;

    public static TheoryData<string> Folders => new(MustNotKnow.Keys);

    public static TheoryData<string> Assemblies => new(OnlyIn.Keys);

    [Fact]
    public void Every_folder_of_the_host_has_its_rule() =>
        Assert.Subset(MustNotKnow.Keys.ToHashSet(), Types.Select(type => FolderOf(type.Type)).OfType<string>().ToHashSet());

    [Theory]
    [MemberData(nameof(Folders))]
    public void A_folder_of_the_host_keeps_to_its_stage(string folder)
    {
        string[] broken = UsesFrom(folder).Where(use => FolderOf(use.Used) is { } used && MustNotKnow[folder].Contains(used)).Select(Text).ToArray();
        Assert.True(broken.Length == 0, string.Join("\n", broken));
    }

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void An_outside_library_is_used_in_one_folder(string assembly)
    {
        string[] broken = Types.SelectMany(type => type.Uses.Select(used => (User: type.Type, Used: used)))
            .Where(use => use.Used.Assembly == assembly && FolderOf(use.User) != OnlyIn[assembly])
            .Select(Text)
            .ToArray();
        Assert.True(broken.Length == 0, string.Join("\n", broken));
    }

    /// <summary>Time comes in as a parameter, so that a test can choose it; a stopwatch measures waiting and tells no time.</summary>
    [Fact]
    public void No_part_of_the_host_asks_for_the_time_of_day()
    {
        string[] clocks = ["System.DateTime::get_Now", "System.DateTime::get_UtcNow", "System.DateTimeOffset::get_Now", "System.DateTimeOffset::get_UtcNow"];
        IEnumerable<string> broken =
            from type in Types
            from method in type.Methods
            where method.Instructions.Any(instruction => clocks.Contains(instruction.Operand))
            select $"{type.Type.FullName}.{method.Name}";
        Assert.Empty(broken);
    }

    /// <summary>The scan itself would let everything pass if it saw no use at all.</summary>
    [Fact]
    public void The_scan_sees_that_judging_uses_sessions_and_sheets() =>
        Assert.Superset(new HashSet<string> { "Sessions", "DataSheets" }, UsesFrom("Judging").Select(use => FolderOf(use.Used)).OfType<string>().ToHashSet());

    private static IEnumerable<(UsedType User, UsedType Used)> UsesFrom(string folder) => Types
        .Where(type => FolderOf(type.Type) == folder)
        .SelectMany(type => type.Uses.Select(used => (type.Type, used)));

    private static string? FolderOf(UsedType type) => type.Namespace.StartsWith(Root, StringComparison.Ordinal) ? type.Namespace[Root.Length..].Split('.')[0] : null;

    private static string Text((UsedType User, UsedType Used) use) => $"{use.User.FullName} uses {use.Used}";
}
