using System;
using System.IO;
using System.Linq;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Protocol.Tests.Vectors;

/// <summary>
/// Byte strings that other programs can test against, written and read by this code.
/// </summary>
public sealed class VectorTests
{
    private static readonly string Folder = Path.Combine(Repository.Root, "tests", "vectors", "v1");

    public static TheoryData<string> RecordNames => new(Examples.Records().Select(Examples.Name));

    public static TheoryData<MessageCode> MessageCodes => new(Examples.Messages().Select(message => message.Code));

    [Theory]
    [MemberData(nameof(RecordNames))]
    public void The_code_writes_the_vector_of_a_record(string name)
    {
        IRecord record = Examples.Records().Single(example => Examples.Name(example) == name);
        AssertStored(name, Examples.Bytes(record), Examples.Text(record));
    }

    [Theory]
    [MemberData(nameof(MessageCodes))]
    public void The_code_writes_the_vector_of_a_frame(MessageCode code)
    {
        IMessage message = Examples.Messages().Single(example => example.Code == code);
        FrameEncoder encoder = new();
        int length = encoder.Encode(message);
        AssertStored("frame-" + code, encoder.Frame[..length], Examples.Text(message));
    }

    [Fact]
    public void Every_frame_in_the_folder_is_a_sound_frame_of_its_message()
    {
        string[] files = Directory.GetFiles(Folder, "frame-*.hex");
        Assert.NotEmpty(files);
        foreach (string file in files)
        {
            FrameDecoder decoder = new();
            byte[] wire = Bytes(file);
            Assert.True(wire.Select(decoder.Accept).ToList()[^1], file);
            Assert.EndsWith("frame-" + (MessageCode)decoder.Content.ReadByte(), Path.GetFileNameWithoutExtension(file), StringComparison.Ordinal);
        }
    }

    private static void AssertStored(string name, byte[] bytes, string text)
    {
        string hex = Hex(bytes);

        // For whoever adds a record: what belongs into the folder, beside the test's own files.
        string made = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "vectors-made")).FullName;
        File.WriteAllText(Path.Combine(made, name + ".hex"), hex);
        File.WriteAllText(Path.Combine(made, name + ".txt"), text);

        Assert.Equal(Stored(name + ".hex"), hex);
        Assert.Equal(Stored(name + ".txt"), text);
    }

    [Fact]
    public void Every_record_in_the_folder_is_read_as_its_text_says()
    {
        string[] files = Directory.GetFiles(Folder, "*.hex").Where(file => !Path.GetFileName(file).StartsWith("frame-", StringComparison.Ordinal)).ToArray();
        Assert.NotEmpty(files);
        foreach (string file in files)
        {
            byte[] bytes = Bytes(file);
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

    private static byte[] Bytes(string file) => Convert.FromHexString(File.ReadAllText(file).ReplaceLineEndings(""));

    private static string Hex(byte[] bytes) =>
        string.Concat(bytes.Chunk(32).Select(line => Convert.ToHexString(line) + "\n"));
}
