using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Protocol.Tests.Document;

/// <summary>The document shows how a greeting becomes a frame; here the code makes each step of it.</summary>
public sealed class FrameExampleTests
{
    [Fact]
    public void The_document_shows_the_frame_that_the_code_writes()
    {
        Hello hello = new() { Version = LinkVersion.Current };
        byte[] content = new byte[3];
        ByteWriter writer = new(content);
        writer.WriteByte((byte)hello.Code);
        hello.Write(writer);
        FrameEncoder encoder = new();
        byte[] wire = encoder.Frame[..encoder.Encode(hello)];
        string[] made =
        [
            Hex(content),
            Hex([.. content, .. BitConverter.GetBytes(Crc32.Of(content, 0, content.Length))]),
            Hex(wire[..^1].Select(value => (byte)(value ^ FrameFormat.Delimiter))),
            Hex(wire),
        ];
        Assert.Equal(ProtocolDocument.Read().Rows("4. Frames", "step").Select(row => row[1]), made);
    }

    private static string Hex(IEnumerable<byte> bytes) => string.Join(' ', bytes.Select(value => value.ToString("X2")));
}
