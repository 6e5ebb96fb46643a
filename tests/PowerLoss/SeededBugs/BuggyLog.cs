using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;
using System.Runtime.Loader;
using LoggerBox.Protocol.Records;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace LoggerBox.PowerLoss.SeededBugs;

/// <summary>The real storage sources with one line changed, compiled, and the simulator run against them in a world of its own.</summary>
public sealed class BuggyLog : AssemblyLoadContext
{
    private const string CaptureName = "LoggerBox.Capture";

    private readonly byte[] capture;

    private BuggyLog(byte[] capture)
        : base(isCollectible: true) => this.capture = capture;

    /// <summary>What the simulator finds; empty when it finds nothing.</summary>
    /// <param name="storageFolder">firmware/capture/Storage of this clone.</param>
    public static IReadOnlyList<string> Violations(string storageFolder, SeededBug? bug, int seed)
    {
        BuggyLog world = new(Compile(storageFolder, bug));
        try
        {
            Type campaign = world.LoadFromAssemblyName(typeof(BuggyLog).Assembly.GetName()).GetType(typeof(ShortCampaign).FullName!)!;
            return (string[])campaign.GetMethod(nameof(ShortCampaign.Violations))!.Invoke(null, [seed])!;
        }
        finally
        {
            world.Unload();
        }
    }

    protected override Assembly? Load(AssemblyName assemblyName) => assemblyName.Name switch
    {
        CaptureName => LoadFromStream(new MemoryStream(capture)),
        _ when assemblyName.Name == typeof(BuggyLog).Assembly.GetName().Name => LoadFromAssemblyPath(typeof(BuggyLog).Assembly.Location),
        _ => null,
    };

    private static byte[] Compile(string storageFolder, SeededBug? bug)
    {
        IEnumerable<SyntaxTree> sources = Directory.GetFiles(storageFolder, "*.cs").Select(file => CSharpSyntaxTree.ParseText(Text(file, bug)));
        string platform = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        string[] references = [typeof(object).Assembly.Location, Path.Combine(platform, "System.Runtime.dll"), typeof(IRecord).Assembly.Location];
        CSharpCompilation compilation = CSharpCompilation.Create(
            CaptureName,
            sources,
            references.Select(file => MetadataReference.CreateFromFile(file)),
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release, nullableContextOptions: NullableContextOptions.Enable));
        using MemoryStream stream = new();
        var result = compilation.Emit(stream);
        return result.Success ? stream.ToArray()
            : throw new InvalidOperationException($"'{bug}' does not compile: {result.Diagnostics.First(one => one.Severity == DiagnosticSeverity.Error)}");
    }

    private static string Text(string file, SeededBug? bug)
    {
        string text = File.ReadAllText(file).ReplaceLineEndings("\n");
        if (bug is null || Path.GetFileName(file) != bug.File)
        {
            return text;
        }

        int at = text.IndexOf(bug.Line, StringComparison.Ordinal);
        bool once = at >= 0 && text.IndexOf(bug.Line, at + 1, StringComparison.Ordinal) < 0;
        return once ? text.Replace(bug.Line, bug.Instead, StringComparison.Ordinal)
            : throw new InvalidOperationException($"'{bug}': its line does not stand once in {bug.File}.");
    }
}
