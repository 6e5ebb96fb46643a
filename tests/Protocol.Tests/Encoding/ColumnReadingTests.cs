using System;
using LoggerBox.Protocol.Encoding;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Protocol.Tests.Encoding;

public sealed class ColumnReadingTests
{
    [Theory]
    [InlineData(ColumnMode.Delta)]
    [InlineData(ColumnMode.Average)]
    [InlineData(ColumnMode.Trend)]
    public void Many_values_at_a_time_are_those_that_come_one_by_one_whatever_the_bits(ColumnMode mode)
    {
        int seed = Environment.TickCount;
        Random random = new(seed);
        ColumnCode code = ColumnCodes.ByMode()[(int)mode];
        for (int n = 0; n < 10_000; n++)
        {
            byte[] bytes = Bits(random);
            int count = random.Next(1, SampleBlock.Capacity + 1);
            int offset = random.Next(bytes.Length);
            string single = Read(bytes, offset, (reader, column) =>
            {
                for (int i = 0; i < count; i++)
                {
                    column[i] = code.Take(reader);
                }
            });
            string together = Read(bytes, offset, (reader, column) => code.Read(reader, column, count));
            Assert.True(single == together, $"seed {seed}, bits {n}: {together} in place of {single}");

            string Read(byte[] from, int at, Action<BitReader, short[]> take)
            {
                ByteReader source = new(from);
                source.Restart(at, from.Length - at);
                BitReader reader = new();
                reader.Begin(source);
                code.Begin();
                short[] column = new short[SampleBlock.Capacity];
                take(reader, column);
                reader.End();
                return $"{source.Position} {source.TooShort} {string.Join(' ', column)}";
            }
        }
    }

    // Short and long codes, missing readings, escapes, and an end that comes too soon.
    private static byte[] Bits(Random random)
    {
        byte[] bytes = new byte[random.Next(1, 400)];
        random.NextBytes(bytes);
        int ones = random.Next(4);
        for (int i = 0; i < bytes.Length; i++)
        {
            bytes[i] = ones switch
            {
                1 => (byte)(bytes[i] & random.Next(256)),
                2 => (byte)(bytes[i] | (random.Next(30) == 0 ? 0xFF : 0)),
                3 => random.Next(10) == 0 ? (byte)0xFF : (byte)(bytes[i] & 0x5B),
                _ => bytes[i],
            };
        }

        return bytes;
    }
}
