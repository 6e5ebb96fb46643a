using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Reflection;
using LoggerBox.Protocol.Encoding;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using Xunit;

namespace LoggerBox.Protocol.Tests.Document;

public sealed class CodeTableTests
{
    private static readonly ProtocolDocument Document = ProtocolDocument.Read();

    [Theory]
    [InlineData(typeof(RecordCode))]
    [InlineData(typeof(ChannelKind))]
    [InlineData(typeof(Gear))]
    [InlineData(typeof(Step))]
    [InlineData(typeof(EventKind))]
    [InlineData(typeof(Cue))]
    [InlineData(typeof(BoardFault))]
    [InlineData(typeof(RestartReason))]
    [InlineData(typeof(DropoutReason))]
    [InlineData(typeof(SessionEndReason))]
    [InlineData(typeof(RefusalReason))]
    [InlineData(typeof(ColumnMode))]
    public void Codes_of_the_document_are_the_codes_of_the_source(Type codes)
    {
        IEnumerable<string> documented = Document.Rows(codes.Name, "code").Select(row => $"{Number(row[0])} {row[1]}");
        IEnumerable<string> written = Enum.GetValues(codes).Cast<object>().Select(code => $"{Convert.ToInt32(code)} {code}");
        Assert.Equal(written, documented);
    }

    [Fact]
    public void Message_codes_of_the_document_are_those_of_the_source()
    {
        IEnumerable<string> documented = Document.Rows(nameof(MessageCode), "code").Select(row => $"{Number(row[0])} {row[1]}");
        IEnumerable<string> written = Enum.GetValues<MessageCode>().Where(code => code != MessageCode.None).Select(code => $"{(int)code} {code}");
        Assert.Equal(written, documented);
    }

    [Fact]
    public void Constants_of_the_document_are_those_of_the_source()
    {
        IReadOnlyList<string[]> rows = Document.Rows("1. Conventions", "constant");
        Assert.True(rows.Count >= 10);
        foreach (string[] row in rows)
        {
            string[] name = row[0].Split('.');
            Type type = typeof(RecordFormat).Assembly.GetTypes().Single(candidate => candidate.Name == name[0]);
            FieldInfo field = Assert.IsAssignableFrom<FieldInfo>(type.GetField(name[1]));
            Assert.Equal(Convert.ToInt64(field.GetRawConstantValue()), Number(row[1]));
        }
    }

    private static long Number(string text) => text.StartsWith("0x", StringComparison.Ordinal)
        ? long.Parse(text[2..], NumberStyles.HexNumber)
        : long.Parse(text);
}
