using System;
using System.IO;
using System.Linq;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Protocol.Tests.Vectors;

/// <summary>
/// Byte strings that other programs can test against. A draft may be replaced by what the code makes; a frozen version never.
/// </summary>
public sealed class VectorTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "tests", "vectors", "draft");

    public static TheoryData<string> Names => new(Examples.Records().Select(Examples.Name));

    [Theory]
    [MemberData(nameof(Names))]
    public void The_code_writes_the_vector(string name)
    {
        IRecord record = Examples.Records().Single(example => Examples.Name(example) == name);
        string hex = Hex(Examples.Bytes(record));
        string text = Examples.Text(record);

        // For whoever adds a record: what belongs into the folder, beside the test's own files.
        string made = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "vectors-made")).FullName;
        File.WriteAllText(Path.Combine(made, name + ".hex"), hex);
        File.WriteAllText(Path.Combine(made, name + ".txt"), text);

        Assert.Equal(Stored(name + ".hex"), hex);
        Assert.Equal(Stored(name + ".txt"), text);
    }

    [Fact]
    public void Every_vector_in_the_folder_is_read_as_its_text_says()
    {
        string[] files = Directory.GetFiles(Folder, "*.hex");
        Assert.NotEmpty(files);
        foreach (string file in files)
        {
            byte[] bytes = Convert.FromHexString(File.ReadAllText(file).ReplaceLineEndings(""));
            RecordReader reader = new(bytes);
            Envelope envelope = new();
            Assert.Equal(EnvelopeResult.Complete, reader.TryReadEnvelope(0, bytes.Length, envelope));
            IRecord record = Examples.Empty(envelope.Code);
            Assert.True(reader.TryReadBody(envelope, record), file);
            Assert.Equal(Stored(Path.ChangeExtension(Path.GetFileName(file), ".txt")), Examples.Text(record));
        }
    }

    private static string Stored(string name)
    {
        string path = Path.Combine(Folder, name);
        return File.Exists(path) ? File.ReadAllText(path).ReplaceLineEndings("\n") : "no file " + path;
    }

    private static string Hex(byte[] bytes) =>
        string.Concat(bytes.Chunk(32).Select(line => Convert.ToHexString(line) + "\n"));
}
