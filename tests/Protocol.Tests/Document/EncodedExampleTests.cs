using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Tests.Encoding;
using Xunit;

namespace LoggerBox.Protocol.Tests.Document;

public sealed class EncodedExampleTests
{
    private const int HeadLength = 9;

    private static readonly IReadOnlyList<string[]> Rows = ProtocolDocument.Read().Rows("Example of encoded columns", "bits");

    private static readonly byte[] Record = Convert.FromHexString(
        File.ReadAllText(Path.Combine(Repository.Root, "tests", "vectors", "v1", "SampleBlock.hex")).ReplaceLineEndings(""));

    private static byte[] Body => Record[RecordFormat.HeaderLength..^RecordFormat.CrcLength];

    [Fact]
    public void The_bits_of_the_worked_example_are_those_of_the_vector()
    {
        string bits = string.Concat(Rows.Select(row => row[0].Replace(" ", "", StringComparison.Ordinal)));
        Assert.Equal(string.Concat(Body[HeadLength..].Select(value => Convert.ToString(value, 2).PadLeft(8, '0'))), bits);
    }

    [Fact]
    public void The_values_of_the_worked_example_are_those_that_its_bits_give()
    {
        IEnumerable<int> written = Rows.Where(row => row[3].Length > 0).Select(row => int.Parse(row[3]));
        Assert.Equal(DocumentReader.Columns(Body).SelectMany(column => column), written);
    }
}
