using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using Xunit;

namespace LoggerBox.Architecture.Tests.Files;

public class SourceStyleTests
{
    private const int LongestFile = 300;

    /// <summary>Words that say nothing about what a type does.</summary>
    private static readonly string[] EmptyWords = ["Manager", "Helper", "Helpers", "Util", "Utils", "Utility", "Utilities", "Common", "Base"];

    private static readonly string[] TextEndings = [".cs", ".csproj", ".props", ".targets", ".json", ".md", ".toml", ".sql", ".html", ".css", ".js", ".txt"];

    private static readonly (string Text, string Reason)[] Unwanted =
    [
        ("/work" + "/", "a path of one machine"),
        ("shared" + "/", "a folder that no clone has"),
        ("TO" + "DO", "work left over"),
        ("FIX" + "ME", "work left over"),
        ("Gets or " + "sets", "a comment that says nothing"),
        ("#reg" + "ion", "a banner"),
    ];

    private static IEnumerable<string> Sources => Repository.Files.Where(file => file.EndsWith(".cs", StringComparison.Ordinal));

    private static IEnumerable<string> Texts => Repository.Files.Where(file => TextEndings.Contains(Path.GetExtension(file)) || Path.GetExtension(file).Length == 0);

    [Fact]
    public void No_source_file_is_longer_than_300_lines()
    {
        string[] broken = Sources.Where(file => Lines(file) > LongestFile).Select(file => $"{file}: {Lines(file)} lines").ToArray();
        Assert.True(broken.Length == 0, string.Join("\n", broken));
    }

    [Fact]
    public void Half_of_the_source_files_are_shorter_than_80_lines()
    {
        int[] lengths = Sources.Select(Lines).Order().ToArray();
        Assert.True(lengths[lengths.Length / 2] < 80, $"the median is {lengths[lengths.Length / 2]} lines");
    }

    [Fact]
    public void No_type_or_file_has_a_name_that_says_nothing()
    {
        IEnumerable<string> names = Sources.SelectMany(file => Regex
            .Matches(Repository.Text(file), @"\b(?:class|struct|interface|enum|record)\s+([A-Z]\w*)")
            .Select(match => match.Groups[1].Value)
            .Append(Path.GetFileNameWithoutExtension(file))
            .Select(name => (file, name)))
            .Where(item => WordsOf(item.name).Intersect(EmptyWords).Any())
            .Select(item => $"{item.file}: {item.name}");
        Assert.Empty(names.Distinct());
    }

    [Fact]
    public void No_text_names_what_a_clone_does_not_have_or_leaves_work_over()
    {
        string[] broken = Texts.SelectMany(file => Unwanted
            .Where(item => Repository.Text(file).Contains(item.Text, StringComparison.Ordinal))
            .Select(item => $"{file}: \"{item.Text}\", {item.Reason}")).ToArray();
        Assert.True(broken.Length == 0, string.Join("\n", broken));
    }

    [Fact]
    public void No_source_file_has_two_empty_lines_in_a_row() =>
        Assert.DoesNotContain(Sources, file => Regex.IsMatch(Repository.Text(file), @"\n\r?\n\r?\n"));

    [Fact]
    public void The_top_level_holds_what_a_reader_expects_there()
    {
        string[] expected =
        [
            ".ci", ".editorconfig", ".gitignore", "CHANGELOG.md", "DEVELOPERS.md", "Directory.Build.props", "Directory.Build.targets", "Directory.Packages.props", "docs", "LICENSE",
            "LoggerBox.sln", "NOTICE", "README.md", "examples", "firmware", "global.json", "hardware-notes", "host", "packaging", "shared-protocol", "tests",
        ];
        Assert.Equal(expected.Order(StringComparer.Ordinal), Repository.Files.Select(file => file.Split('/')[0]).Distinct().Order(StringComparer.Ordinal));
    }

    private static int Lines(string file) => File.ReadLines(Repository.PathOf(file)).Count();

    private static string[] WordsOf(string name) => Regex.Matches(name, "[A-Z][a-z]*").Select(match => match.Value).ToArray();
}
