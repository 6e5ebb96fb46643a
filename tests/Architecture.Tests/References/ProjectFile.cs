using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Xml.Linq;
using LoggerBox.Architecture.Tests.Files;

namespace LoggerBox.Architecture.Tests.References;

/// <summary>What a project file asks for.</summary>
internal sealed record ProjectFile(string Name, IReadOnlySet<string> Projects, IReadOnlySet<string> Packages)
{
    private const string SignatureFolder = "firmware/device-signatures/";

    /// <summary>Every project of the repository that is no test, and no stand-in for a package.</summary>
    public static IReadOnlyList<ProjectFile> Products { get; } = All(file => !file.StartsWith("tests/", System.StringComparison.Ordinal) && !file.StartsWith(SignatureFolder, System.StringComparison.Ordinal));

    /// <summary>What stands in for the device packages.</summary>
    public static IReadOnlyList<ProjectFile> Signatures { get; } = All(file => file.StartsWith(SignatureFolder, System.StringComparison.Ordinal));

    private static List<ProjectFile> All(System.Func<string, bool> isWanted) =>
        Repository.Files.Where(file => file.EndsWith(".csproj", System.StringComparison.Ordinal) && isWanted(file)).Select(Read).ToList();

    private static ProjectFile Read(string file)
    {
        XElement project = XDocument.Load(Repository.PathOf(file)).Root!;
        return new ProjectFile(
            NameOf(file),
            project.Descendants("ProjectReference").Select(item => NameOf(item.Attribute("Include")!.Value)).ToHashSet(),
            project.Descendants("PackageReference").Select(item => item.Attribute("Include")!.Value).ToHashSet());
    }

    private static string NameOf(string path) => Path.GetFileNameWithoutExtension(path.Replace('\\', '/'));
}
