using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Reflection;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Protocol.Tests.Document;

/// <summary>
/// Reads bytes that the code wrote by nothing but the document's tables, and compares each field with the object that was written.
/// </summary>
public sealed class FieldTableTests
{
    private const string LeftOutWhereZero = nameof(HoldRecord.Drifting);

    private static readonly ProtocolDocument Document = ProtocolDocument.Read();

    public static TheoryData<string> Names => new(
        Examples.Records().Select(record => record.GetType().Name).Distinct()
            .Concat(Examples.Messages().Select(message => message.GetType().Name)));

    [Theory]
    [MemberData(nameof(Names))]
    public void Bytes_read_by_the_table_are_the_fields_that_were_written(string name)
    {
        IEnumerable<object> examples = name == nameof(SampleBlock) ? PlainBlocks()
            : Examples.Records().Cast<object>().Concat(Examples.Messages()).Where(thing => thing.GetType().Name == name);
        foreach (object example in examples)
        {
            CompareExample(example, name);
        }
    }

    // Every form of a block's head; encoded columns are read by DocumentReader.
    private static IEnumerable<SampleBlock> PlainBlocks() =>
    [
        Examples.NoiseBlock(20000, 5), Examples.NoiseBlock(20000, SampleBlock.Capacity), Examples.NoiseBlock(20001, 5), Examples.NoiseBlock(20000, 0),
        Examples.NoiseBlock(0, 5), Examples.NoiseBlock(0, SampleBlock.Capacity, -5), Examples.NoiseBlock(25600, 7, 1L << 48), Examples.NoiseBlock(25500, 7, (1L << 48) - 1),
    ];

    private static void CompareExample(object example, string name)
    {
        byte[] buffer = new byte[2048];
        ByteWriter writer = new(buffer);
        Write(example, writer);
        if (!Document.HasTable(name, "at"))
        {
            Assert.Contains(name, (string[])[nameof(SendPlan), nameof(PlanAnswer), nameof(ClockAnswer)]);
            Assert.Equal(example is SendPlan ? Size(nameof(PlanRecord)) : 0, writer.Position);
            return;
        }

        int end = Compare(example, name, buffer, 0, writer.Position);
        Assert.Equal(writer.Position, end);
    }

    [Fact]
    public void The_envelope_is_where_the_table_says()
    {
        byte[] bytes = Examples.Bytes(new EventRecord());
        Dictionary<string, int> at = Document.Rows("2. Records", "at").ToDictionary(
            row => row[2], row => row[0] == "16 + BodyLength" ? bytes.Length - RecordFormat.CrcLength : int.Parse(row[0]));
        Assert.Equal([RecordFormat.FirstMark, RecordFormat.SecondMark], bytes.AsSpan(at["Mark"], 2).ToArray());
        Assert.Equal((byte)RecordCode.Event, bytes[at["Code"]]);
        Assert.Equal(RecordFormat.Version, bytes[at["Version"]]);
        Assert.Equal(Size(nameof(EventRecord)), BitConverter.ToUInt16(bytes, at["BodyLength"]));
        Assert.Equal(7u, BitConverter.ToUInt32(bytes, at["SessionNumber"]));
        Assert.Equal(2, BitConverter.ToUInt16(bytes, at["BootCount"]));
        Assert.Equal(3u, BitConverter.ToUInt32(bytes, at["Sequence"]));
        Assert.Equal(RecordFormat.HeaderLength, at["Body"]);
        Assert.Equal(Framing(bytes), BitConverter.ToUInt32(bytes, at["Crc"]));
    }

    private static uint Framing(byte[] bytes) => Protocol.Framing.Crc32.Of(bytes, 0, bytes.Length - RecordFormat.CrcLength);

    private static void Write(object thing, ByteWriter writer)
    {
        if (thing is IRecord record)
        {
            record.Write(writer);
        }
        else
        {
            ((IMessage)thing).Write(writer);
        }
    }

    private static int Compare(object thing, string table, byte[] bytes, int start, int length)
    {
        int at = start;
        foreach (string[] row in Document.Rows(table, "at"))
        {
            (string offset, string size, string name, string type) = (row[0], row[1], row[2], row[3]);
            Assert.True(offset.Length == 0 || at == start + int.Parse(offset), $"{table}.{name} stands at {at - start}");
            if (at == length && name == LeftOutWhereZero)
            {
                Assert.Equal(0, Convert.ToInt64(Value(thing, name)));
                continue;
            }

            int fieldStart = at;
            type = thing is SampleBlock ? TypeInBlock(name, type, bytes[start]) : type;
            at = type == "rest" ? length
                : type.Contains(" x ", StringComparison.Ordinal) ? CompareMany(thing, name, type, bytes, at, length)
                : CompareOne(thing, table, name, type, bytes, at);
            Assert.True(size == "varies" || at - fieldStart == int.Parse(size), $"{table}.{name} has {at - fieldStart} bytes");
        }

        return at;
    }

    private static int CompareMany(object thing, string name, string type, byte[] bytes, int at, int length)
    {
        string[] parts = type.Split(" x ");
        int count = int.TryParse(parts[0], out int fixedCount) ? fixedCount : Convert.ToInt32(Value(thing, parts[0]));
        if (name == "Offsets" && thing is SampleBlock { IntervalMicroseconds: not 0 })
        {
            return at;
        }

        for (int i = 0; i < count; i++)
        {
            at = Value(thing, name) is Array items
                ? Compare(items.GetValue(i)!, parts[1], bytes, at, length)
                : CompareSample((SampleBlock)thing, name, i, parts[1], bytes, at);
        }

        return at;
    }

    private static int CompareSample(SampleBlock block, string name, int index, string type, byte[] bytes, int at)
    {
        SampleSet sample = new();
        block.CopyTo(index, sample);
        long expected = name == "Offsets"
            ? sample.Microseconds - block.FirstMicroseconds
            : sample.Values[(int)typeof(Channel).GetField(name)!.GetRawConstantValue()!];
        expected -= name == nameof(Channel.Speed) ? SampleBlock.SpeedMiddleTenths : 0;
        Assert.Equal(expected, Number(type, bytes, at));
        return at + Size(type);
    }

    private static int CompareOne(object thing, string table, string name, string type, byte[] bytes, int at)
    {
        object? value = Value(thing, name);
        if (type == "text")
        {
            string text = System.Text.Encoding.UTF8.GetString(bytes, at, Size(type)).TrimEnd('\0');
            Assert.Equal(value, text);
        }
        else if (value != null && type != "none")
        {
            long unit = name == nameof(SampleBlock.IntervalMicroseconds) && type == "u8" ? 100 : 1;
            Assert.True(Convert.ToInt64(value) == unit * Number(type, bytes, at), $"{table}.{name} at {at}");
        }
        else
        {
            // Flags and a block's form are no fields of their own in the source, nor is the count of a full block.
            Assert.Contains(name, (string[])["Flags", "Form", "Count"]);
        }

        return at + Size(type);
    }

    private static string TypeInBlock(string name, string type, byte form)
    {
        bool full = (form & BlockHead.FullFlag) != 0;
        int wide = (form & BlockHead.WideFlag) != 0 ? 1 : 0;
        return name == nameof(SampleBlock.Count) && full ? "none"
            : type.Contains(" or ", StringComparison.Ordinal) ? type.Split(" or ")[wide] : type;
    }

    private static object? Value(object thing, string name) =>
        thing.GetType().GetField(name, BindingFlags.Public | BindingFlags.Instance)?.GetValue(thing);

    private static long Number(string type, byte[] bytes, int at) => type switch
    {
        "u8" or "bool" or "code" => bytes[at],
        "u16" => BitConverter.ToUInt16(bytes, at),
        "i16" => BitConverter.ToInt16(bytes, at),
        "u32" => BitConverter.ToUInt32(bytes, at),
        "i32" => BitConverter.ToInt32(bytes, at),
        "u48" => BitConverter.ToUInt32(bytes, at) | ((long)BitConverter.ToUInt16(bytes, at + 4) << 32),
        "i64" => BitConverter.ToInt64(bytes, at),
        _ => throw new InvalidDataException("PROTOCOL.md has no type " + type),
    };

    private static int Size(string type) => type switch
    {
        "u8" or "bool" or "code" => 1,
        "u16" or "i16" => 2,
        "u32" or "i32" => 4,
        "u48" => 6,
        "i64" => 8,
        "none" => 0,
        "text" => RecordFormat.TextWidth,
        _ => Document.Rows(type, "at").Sum(row => int.Parse(row[1])),
    };
}
