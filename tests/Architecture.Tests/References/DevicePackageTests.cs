using System.Collections.Generic;
using System.Linq;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using LoggerBox.Architecture.Tests.Files;
using Xunit;

namespace LoggerBox.Architecture.Tests.References;

/// <summary>A package and a firmware of different releases do not run together: every place that names versions names the same.</summary>
public class DevicePackageTests
{
    private const string Folder = "firmware/board-esp32/";

    private static readonly IReadOnlyList<(string Package, string Version, string Assembly, bool HasSignatures)> Packages =
        XDocument.Load(Repository.PathOf(Folder + "DevicePackages.props")).Descendants("DevicePackage")
            .Where(item => item.Attribute("Folder") is not null)
            .Select(item => (Of(item, "Include"), Of(item, "Number"), Of(item, "Assembly"), item.Attribute("Signatures") is not null))
            .ToList();

    [Fact]
    public void Each_package_is_named_with_one_version_throughout() => Assert.All(XDocument.Load(Repository.PathOf(Folder + "DevicePackages.props")).Descendants("DevicePackage"), item =>
    {
        Assert.Equal($"[{Of(item, "Number")}]", Of(item, "Version"));
        Assert.Equal(Of(item, "Include").ToLowerInvariant(), Of(item, "Folder"));
    });

    [Fact]
    public void The_editor_extensions_restore_the_same_versions() => Assert.Equal(
        Packages.Select(package => (package.Package, package.Version)).Prepend(("nanoFramework.CoreLibrary", "1.17.11")),
        XDocument.Load(Repository.PathOf(Folder + "packages.config")).Descendants("package").Select(item => (Of(item, "id"), Of(item, "version"))));

    [Fact]
    public void The_editor_extensions_project_takes_them_from_there()
    {
        string project = Repository.Text(Folder + "board-esp32.nfproj");
        Assert.All(Packages, package => Assert.Contains($@"packages\{package.Package}.{package.Version}\lib\{package.Assembly}.dll", project, System.StringComparison.Ordinal));
    }

    [Fact]
    public void The_board_prints_the_same_versions() => Assert.Equal(
        Packages.Select(package => $"{package.Assembly} {package.Version}").Prepend("mscorlib 1.17.11"),
        Regex.Matches(Repository.Text(Folder + "BootReport.cs"), "\"([\\w.]+ [0-9.]+) (?:[0-9A-F]{8}|managed)\"").Select(match => match.Groups[1].Value));

    [Fact]
    public void Each_stand_in_says_which_package_it_stands_for() => Assert.All(Packages.Where(package => package.HasSignatures), package =>
    {
        string text = Repository.Text($"firmware/device-signatures/{package.Assembly}/Signatures.cs");
        Assert.StartsWith($"// Signatures of {package.Package} {package.Version}, ", text, System.StringComparison.Ordinal);
        Assert.Contains($"AssemblyVersion(\"{package.Version}.0\")", text, System.StringComparison.Ordinal);
    });

    private static string Of(XElement item, string name) => item.Attribute(name)!.Value;
}
