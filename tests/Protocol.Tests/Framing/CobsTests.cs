using System;
using System.Linq;
using LoggerBox.Protocol.Framing;
using Xunit;

namespace LoggerBox.Protocol.Tests.Framing;

/// <summary>
/// Examples after Cheshire and Baker, "Consistent Overhead Byte Stuffing", IEEE/ACM Transactions on Networking 7(2), 1999, and the
/// published tables that repeat them; the paper's delimiter is 0.
/// </summary>
public sealed class CobsTests
{
    public static TheoryData<string, string> Examples => new()
    {
        { "", "01" },
        { "00", "01 01" },
        { "00 00", "01 01 01" },
        { "00 11 00", "01 02 11 01" },
        { "11 22 00 33", "03 11 22 02 33" },
        { "11 22 33 44", "05 11 22 33 44" },
        { "11 00 00 00", "02 11 01 01 01" },
        { "DE AD 00 BE EF", "03 DE AD 03 BE EF" },
        { Run(0x01, 0xFE), "FF " + Run(0x01, 0xFE) },
        { "00 " + Run(0x01, 0xFE), "01 FF " + Run(0x01, 0xFE) },
        { Run(0x01, 0xFF), "FF " + Run(0x01, 0xFE) + " 02 FF" },
        { Run(0x02, 0xFF) + " 00", "FF " + Run(0x02, 0xFF) + " 01 01" },
        { Run(0x03, 0xFF) + " 00 01", "FE " + Run(0x03, 0xFF) + " 02 01" },
    };

    [Theory]
    [MemberData(nameof(Examples))]
    public void Example_of_the_paper(string plain, string stuffed)
    {
        Assert.Equal(Bytes(stuffed), Encode(Bytes(plain), 0));
        Assert.Equal(Bytes(plain), Decode([.. Bytes(stuffed), 0], 0));
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void Example_of_the_paper_with_the_delimiter_of_the_link(string plain, string stuffed)
    {
        byte[] wire = Encode(Bytes(plain), FrameFormat.Delimiter);
        Assert.Equal(Bytes(stuffed), wire.Select(b => (byte)(b ^ FrameFormat.Delimiter)));
        Assert.DoesNotContain(FrameFormat.Delimiter, wire);
        Assert.Equal(Bytes(plain), Decode([.. wire, FrameFormat.Delimiter], FrameFormat.Delimiter));
    }

    [Fact]
    public void A_full_run_at_the_end_is_read_with_and_without_a_code_byte_after_it()
    {
        byte[] plain = Bytes(Run(0x01, 0xFE));
        Assert.Equal(plain, Decode([0xFF, .. plain, 0], 0));
        Assert.Equal(plain, Decode([0xFF, .. plain, 1, 0], 0));
    }

    [Fact]
    public void Stuffing_never_costs_more_than_one_byte_in_254_and_one()
    {
        Random random = new(20261125);
        for (int count = 0; count < 1200; count++)
        {
            byte[] plain = new byte[count];
            random.NextBytes(plain);
            for (int i = 0; i < count && count % 2 == 0; i++)
            {
                plain[i] |= 1;
            }

            byte[] wire = Encode(plain, FrameFormat.Delimiter);
            Assert.True(wire.Length <= Cobs.LongestEncoding(count), $"seed 20261125, {count} bytes");
            Assert.Equal(plain, Decode([.. wire, FrameFormat.Delimiter], FrameFormat.Delimiter));
        }
    }

    // The paper's bound: one byte, and one more for each 254.
    [Theory]
    [InlineData(0, 1)]
    [InlineData(253, 254)]
    [InlineData(254, 256)]
    [InlineData(508, 511)]
    public void The_longest_stuffing_is_the_papers(int count, int longest) => Assert.Equal(longest, Cobs.LongestEncoding(count));

    [Fact]
    public void A_range_is_stuffed_to_where_it_is_wanted()
    {
        byte[] target = new byte[8];
        Assert.Equal(4, Cobs.Encode(Bytes("99 00 11 00 99"), 1, 3, target, 3, 0));
        Assert.Equal(Bytes("00 00 00 01 02 11 01 00"), target);
    }

    [Fact]
    public void What_does_not_fit_is_not_sound_and_the_next_is()
    {
        CobsDecoder decoder = new(4, 0);
        Assert.Equal(6, decoder.Accept([5, 1, 2, 3, 4, 0], 0, 6));
        Assert.True(decoder.IsSound);
        Assert.Equal(7, decoder.Accept([6, 1, 2, 3, 4, 5, 0], 0, 7));
        Assert.False(decoder.IsSound);
        Assert.Equal(3, decoder.Accept([2, 9, 0], 0, 3));
        Assert.True(decoder.IsSound);
        Assert.Equal(9, decoder.Decoded[0]);
    }

    [Fact]
    public void A_run_cut_by_the_delimiter_is_not_sound()
    {
        CobsDecoder decoder = new(16, 0);
        Assert.False(decoder.Accept(5));
        Assert.False(decoder.Accept(0x11));
        Assert.True(decoder.Accept(0));
        Assert.False(decoder.IsSound);
    }

    private static byte[] Encode(byte[] plain, byte delimiter)
    {
        byte[] target = new byte[Cobs.LongestEncoding(plain.Length)];
        int length = Cobs.Encode(plain, 0, plain.Length, target, 0, delimiter);
        return target[..length];
    }

    private static byte[] Decode(byte[] wire, byte delimiter)
    {
        CobsDecoder decoder = new(2000, delimiter);
        for (int i = 0; i < wire.Length - 1; i++)
        {
            Assert.False(decoder.Accept(wire[i]));
        }

        Assert.True(decoder.Accept(wire[^1]));
        Assert.True(decoder.IsSound);
        return decoder.Decoded[..decoder.DecodedLength];
    }

    private static string Run(int first, int last) =>
        string.Join(' ', Enumerable.Range(first, last - first + 1).Select(b => b.ToString("X2")));

    private static byte[] Bytes(string hex) => Convert.FromHexString(hex.Replace(" ", "", StringComparison.Ordinal));
}
