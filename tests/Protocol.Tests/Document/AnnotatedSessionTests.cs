using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Protocol.Tests.Document;

/// <summary>The document shows one invented session byte by byte; here it is written by the code and annotated by the document's own tables.</summary>
public sealed class AnnotatedSessionTests
{
    private const string Heading = "## 10. One session, byte by byte";
    private const int BytesInALine = 16;

    private static readonly ProtocolDocument Document = ProtocolDocument.Read();

    private readonly List<string> lines = [];
    private int position;

    [Fact]
    public void The_document_shows_the_session_that_the_code_writes()
    {
        Annotate("SessionHeader", Header(), 0);
        Annotate("EventRecord", new EventRecord { Microseconds = 2_500_000, Kind = EventKind.GearTag, Value = (int)Gear.Forward }, 1);
        Annotate("DropoutRecord", new DropoutRecord { FromMicroseconds = 3_000_000, ToMicroseconds = 3_060_000, Reason = DropoutReason.Overrun }, 2);
        Annotate("SessionEnd", new SessionEnd { Microseconds = 4_000_000, Reason = SessionEndReason.Button }, 3);
        string made = string.Join('\n', lines);

        // For whoever changes a record: what belongs into the document.
        File.WriteAllText(Path.Combine(AppContext.BaseDirectory, "annotated-session.txt"), made);

        string text = File.ReadAllText(Path.Combine(Repository.Root, "shared-protocol", "PROTOCOL.md"));
        string[] shown = text[text.IndexOf(Heading, StringComparison.Ordinal)..].Split("```");
        Assert.Equal(made, shown[1].Trim('\n'));
    }

    private static SessionHeader Header() => new()
    {
        LoggerId = 0xB0A7,
        BootCount = 2,
        SessionNumber = 7,
        StartMicroseconds = 1_000_000,
        StartUtcSeconds = 1_790_000_000,
        SampleIntervalMicroseconds = 20_000,
        PlanName = "sample truck",
    };

    private void Annotate(string table, IRecord record, uint sequence)
    {
        byte[] bytes = Examples.Bytes(record, sequence);
        int at = 0;
        void Take(int count, string name)
        {
            for (int i = 0; i < count; i += BytesInALine)
            {
                int length = Math.Min(BytesInALine, count - i);
                string hex = Convert.ToHexString(bytes, at + i, length);
                lines.Add($"{position + at + i:X4}  {string.Join(' ', hex.Chunk(2).Select(pair => new string(pair))),-47}  {(i == 0 ? name : "")}".TrimEnd());
            }

            at += count;
        }

        lines.Add(table);
        foreach (string[] row in Document.Rows("2. Records", "at").Where(row => int.TryParse(row[1], out _) && row[2] != "Crc"))
        {
            Take(int.Parse(row[1]), row[2]);
        }

        foreach (string[] row in Document.Rows(table, "at"))
        {
            Take(int.Parse(row[1]), row[2]);
        }

        Take(RecordFormat.CrcLength, "Crc");
        Assert.Equal(bytes.Length, at);
        position += bytes.Length;
    }
}
