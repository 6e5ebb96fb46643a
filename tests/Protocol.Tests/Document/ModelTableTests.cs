using System;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using Xunit;

namespace LoggerBox.Protocol.Tests.Document;

/// <summary>The model of the dialogue stands for the code only as long as the tests exist that its table names.</summary>
public sealed class ModelTableTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "shared-protocol", "model");

    [Fact]
    public void Each_step_of_the_model_has_a_row_and_each_row_a_test_that_exists()
    {
        string[][] rows = [.. File.ReadAllLines(Path.Combine(Folder, "README.md"))
            .Select(line => Regex.Match(line, @"^\| (\d+) [^|]*\| `([^`]+)` \|$"))
            .Where(row => row.Success)
            .Select(row => new[] { row.Groups[1].Value, row.Groups[2].Value })];
        string[] steps = [.. Regex.Matches(File.ReadAllText(Path.Combine(Folder, "dialogue.pml")), @"\((\d+)\)(?= \w)").Select(step => step.Groups[1].Value)];
        Assert.Equal(steps.Distinct().Order(StringComparer.Ordinal), rows.Select(row => row[0]).Order(StringComparer.Ordinal));

        string[] tests = Directory.GetFiles(Path.Combine(Repository.Root, "tests"), "*Tests.cs", SearchOption.AllDirectories);
        Assert.All(rows, row =>
        {
            string[] name = row[1].Split('.');
            string file = tests.Single(path => Path.GetFileNameWithoutExtension(path) == name[0]);
            Assert.Contains(name[^1], File.ReadAllText(file), StringComparison.Ordinal);
        });
    }
}
