using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using Xunit;

namespace LoggerBox.Link.Tests;

/// <summary>One damaged byte, tried at every position of a stream of Data frames.</summary>
public sealed class DamagedStreamTests
{
    private const int StreamLength = 65_536;

    private readonly List<byte> stream = [];

    // Where each frame begins, and the content that its neighbours must keep.
    private readonly List<(int Start, int End, byte[] Content)> frames = [];

    public DamagedStreamTests()
    {
        Random random = new(65_536);
        FrameEncoder encoder = new();
        Data data = new();
        while (stream.Count < StreamLength)
        {
            data.Offset += (uint)data.Length;
            data.Length = random.Next(16, 257);
            random.NextBytes(data.Payload);
            int length = encoder.Encode(data);
            int start = stream.Count;
            stream.AddRange(encoder.Frame.AsSpan(0, length));
            frames.Add((start, stream.Count, Decoded(encoder.Frame.AsSpan(0, length)).Single()));
        }
    }

    [Theory]
    [InlineData("flipped bits")]
    [InlineData("a delimiter in its place")]
    [InlineData("a zero in its place")]
    [InlineData("the byte is gone")]
    [InlineData("the byte comes twice")]
    public void At_most_one_frame_is_lost_or_two_where_the_delimiter_was_hit_and_none_is_wrong(string damage)
    {
        Random random = new(97);
        byte[] whole = [.. stream];
        for (int i = 0; i < frames.Count; i++)
        {
            // The decoder begins anew at each delimiter: the frames next to the damaged one are all that it can reach.
            (int First, int Last) near = (Math.Max(0, i - 1), Math.Min(frames.Count - 1, i + 2));
            byte[][] sent = [.. frames.Skip(near.First).Take(near.Last - near.First + 1).Select(frame => frame.Content)];
            for (int position = frames[i].Start; position < frames[i].End; position++)
            {
                ReadOnlySpan<byte> around = whole.AsSpan(frames[near.First].Start..frames[near.Last].End);
                List<byte[]> heard = Decoded(Damaged(around, position - frames[near.First].Start, damage, random));
                bool isDelimiter = position == frames[i].End - 1;
                Assert.True(heard.Count >= sent.Length - (isDelimiter ? 2 : 1), $"{damage} at {position}: {sent.Length - heard.Count} frames lost");
                Assert.True(heard.All(frame => sent.Any(one => frame.AsSpan().SequenceEqual(one))), $"{damage} at {position}: a frame that nobody sent");
            }
        }
    }

    private static byte[] Damaged(ReadOnlySpan<byte> bytes, int position, string damage, Random random) => damage switch
    {
        "flipped bits" => [.. bytes[..position], (byte)(bytes[position] ^ random.Next(1, 256)), .. bytes[(position + 1)..]],
        "a delimiter in its place" => [.. bytes[..position], FrameFormat.Delimiter, .. bytes[(position + 1)..]],
        "a zero in its place" => [.. bytes[..position], 0, .. bytes[(position + 1)..]],
        "the byte is gone" => [.. bytes[..position], .. bytes[(position + 1)..]],
        _ => [.. bytes[..position], bytes[position], .. bytes[position..]],
    };

    private static List<byte[]> Decoded(ReadOnlySpan<byte> wire)
    {
        FrameDecoder decoder = new();
        List<byte[]> contents = [];
        foreach (byte value in wire)
        {
            if (decoder.Accept(value))
            {
                byte[] content = new byte[decoder.Content.Remaining];
                decoder.Content.ReadBytes(content, 0, content.Length);
                contents.Add(content);
            }
        }

        return contents;
    }
}
