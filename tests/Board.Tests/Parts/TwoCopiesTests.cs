using LoggerBox.Board.Tests.Bench;
using LoggerBox.BoardParts.Settings;
using LoggerBox.Protocol.Records;
using Xunit;

namespace LoggerBox.Board.Tests.Parts;

public class TwoCopiesTests
{
    private const int ContentLength = 24;

    [Fact]
    public void A_cut_at_any_byte_of_a_write_leaves_the_older_or_the_newer_content_whole()
    {
        for (int cut = 0; cut <= ContentLength + 14; cut++)
        {
            MemoryFlash first = new(), second = new();
            Save(new TwoCopies(first, second), 1);
            Save(new TwoCopies(first, second), 2);
            first.CutAfterBytes = cut;
            Save(new TwoCopies(first, second), 3);
            Assert.Equal(cut == ContentLength + 14 ? 3 : 2, Load(first, second));
            Save(new TwoCopies(first, second), 4);
            Assert.Equal(4, Load(first, second));
        }
    }

    [Fact]
    public void Each_flipped_bit_of_the_newer_copy_brings_back_the_older()
    {
        MemoryFlash first = new(), second = new();
        Save(new TwoCopies(first, second), 1);
        Save(new TwoCopies(first, second), 2);
        byte[] newer = second.Bytes;
        for (int bit = 0; bit < newer.Length * 8; bit++)
        {
            second.Bytes = [.. newer];
            second.Bytes[bit / 8] ^= (byte)(1 << (bit % 8));
            Assert.Equal(1, Load(first, second));
        }
    }

    [Fact]
    public void The_newer_copy_wins_over_the_wrap_of_its_count()
    {
        MemoryFlash first = new(), second = new();
        TwoCopies copies = new(first, second);
        for (int i = 1; i < 200; i++)
        {
            Save(copies, i);
            Assert.Equal(i, Load(first, second));
        }

        Assert.True(first.Writes > 90 && second.Writes > 90);
    }

    [Fact]
    public void Nothing_is_nothing() => Assert.Equal(-1, Load(new MemoryFlash(), new MemoryFlash()));

    private static void Save(TwoCopies copies, int number)
    {
        copies.Load();
        ByteWriter writer = copies.Begin();
        writer.WriteInt32(number);
        writer.WriteBytes(new byte[ContentLength - 4], 0, ContentLength - 4);
        copies.Save();
    }

    private static int Load(MemoryFlash first, MemoryFlash second)
    {
        ByteReader? reader = new TwoCopies(first, second).Load();
        return reader == null ? -1 : reader.ReadInt32();
    }
}
