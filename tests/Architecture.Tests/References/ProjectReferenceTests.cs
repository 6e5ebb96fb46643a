using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.Architecture.Tests.Files;
using LoggerBox.Architecture.Tests.Metadata;
using Xunit;

namespace LoggerBox.Architecture.Tests.References;

/// <summary>
/// Logger and shop PC meet only through bytes: the host never sees the capture engine, the simulator never sees the host, and the application alone
/// sees both.
/// </summary>
public class ProjectReferenceTests
{
    private static readonly Dictionary<string, string[]> MayKnow = new()
    {
        ["LoggerBox.Protocol"] = [],
        ["LoggerBox.Capture"] = ["LoggerBox.Protocol"],
        ["LoggerBox.BoardParts"] = ["LoggerBox.Capture", "LoggerBox.Protocol"],
        ["LoggerBox.SelfTest"] = ["LoggerBox.Capture", "LoggerBox.Protocol"],
        ["LoggerBox.BoardEsp32"] = ["LoggerBox.BoardParts", "LoggerBox.Capture", "LoggerBox.Protocol"],
        ["LoggerBox.Host"] = ["LoggerBox.Protocol"],
        ["LoggerBox.Shop"] = ["LoggerBox.Host", "LoggerBox.Protocol"],
        ["LoggerBox.TruckSimulator"] = ["LoggerBox.Capture", "LoggerBox.Protocol"],
        ["LoggerBox.App"] = ["LoggerBox.Host", "LoggerBox.Shop", "LoggerBox.TruckSimulator", "LoggerBox.Capture", "LoggerBox.Protocol"],
    };

    private static readonly Dictionary<string, string[]> MayFetch = new()
    {
        ["LoggerBox.Protocol"] = [],
        ["LoggerBox.Capture"] = [],
        ["LoggerBox.BoardParts"] = [],
        ["LoggerBox.BoardEsp32"] = [],
        ["LoggerBox.SelfTest"] = [],
        ["LoggerBox.Host"] = ["MathNet.Numerics", "Npgsql", "Parquet.Net", "PDFsharp", "Microsoft.Data.Sqlite", "System.IO.Ports", "Tomlyn"],
        ["LoggerBox.Shop"] = [],
        ["LoggerBox.TruckSimulator"] = [],
        ["LoggerBox.App"] = ["System.CommandLine"],
    };

    public static TheoryData<string> Projects => new(MayKnow.Keys);

    [Fact]
    public void Every_project_that_is_no_test_has_its_rule() => Assert.Equal(MayKnow.Keys.Order(), ProjectFile.Products.Select(project => project.Name).Order());

    [Fact]
    public void Signatures_of_device_packages_know_each_other_only() =>
        Assert.All(ProjectFile.Signatures, project => Assert.Subset(ProjectFile.Signatures.Select(other => other.Name).ToHashSet(), project.Projects.ToHashSet()));

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_asks_only_for_projects_that_it_may_know(string name) => Assert.Subset(MayKnow[name].ToHashSet(), Find(name).Projects.ToHashSet());

    [Theory]
    [MemberData(nameof(Projects))]
    public void A_project_asks_only_for_packages_that_it_may_fetch(string name) => Assert.Subset(MayFetch[name].ToHashSet(), Find(name).Packages.ToHashSet());

    /// <summary>A project reference reaches further than the file says, so the compiled assembly is asked too.</summary>
    [Theory]
    [MemberData(nameof(Projects))]
    public void An_assembly_uses_only_what_its_project_may_know(string name)
    {
        IEnumerable<string> ours = AssemblyReader.Read(AssemblyOf(name)).References.Keys
            .Where(reference => reference.StartsWith("LoggerBox.", System.StringComparison.Ordinal));
        Assert.Subset(MayKnow[name].ToHashSet(), ours.ToHashSet());
    }

    [Fact]
    public void Every_package_stands_in_the_notices_with_its_version()
    {
        string notice = string.Join(' ', Repository.Text("NOTICE").Split(' ', System.StringSplitOptions.RemoveEmptyEntries));
        var packages = System.Xml.Linq.XDocument.Load(Repository.PathOf("Directory.Packages.props")).Descendants("PackageVersion")
            .Select(item => item.Attribute("Include")!.Value + " " + item.Attribute("Version")!.Value)
            .Append("nanoFramework.CoreLibrary 1.17.11");
        Assert.All(packages, package => Assert.Contains(package, notice, System.StringComparison.Ordinal));
    }

    [Fact]
    public void Every_folder_of_recordings_stands_in_the_notices()
    {
        string notice = Repository.Text("NOTICE");
        var folders = Repository.Files.Where(file => file.StartsWith("tests/recordings/", System.StringComparison.Ordinal)).Select(file => file.Split('/')[2]).Where(name => name != "README.md");
        Assert.All(folders.Distinct(), folder => Assert.Contains(folder, notice, System.StringComparison.Ordinal));
    }

    private static string AssemblyOf(string name) => name switch
    {
        "LoggerBox.BoardEsp32" => Repository.PathOf($"firmware/board-esp32/bin/{Repository.Configuration}/netnano1.0/{name}.exe"),
        "LoggerBox.SelfTest" => Repository.PathOf($"firmware/self-test/bin/{Repository.Configuration}/netnano1.0/{name}.exe"),
        "LoggerBox.BoardParts" => Repository.PathOf($"firmware/board-parts/bin/{Repository.Configuration}/netnano1.0/{name}.dll"),
        "LoggerBox.App" => Path.Combine(System.AppContext.BaseDirectory, "loggerbox.dll"),
        _ => Path.Combine(System.AppContext.BaseDirectory, name + ".dll"),
    };

    private static ProjectFile Find(string name) => ProjectFile.Products.Single(project => project.Name == name);
}
