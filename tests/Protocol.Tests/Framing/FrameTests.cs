using System;
using System.Collections.Generic;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using Xunit;
using LinkData = LoggerBox.Protocol.Link.Data;

namespace LoggerBox.Protocol.Tests.Framing;

public sealed class FrameTests
{
    private const int Seed = 71;

    [Fact]
    public void A_frame_of_the_longest_payload_arrives()
    {
        FrameDecoder decoder = new();
        List<byte[]> payloads = Receive(Frame(Data(0, LinkData.MaxPayload)), decoder);
        Assert.Equal(Data(0, LinkData.MaxPayload).Payload, Assert.Single(payloads));
        Assert.Equal((1, 0, 0L), (decoder.Frames, decoder.DamagedFrames, decoder.DamagedBytes));
    }

    // The document's bound: 1,152 bytes of content, its code among them.
    [Fact]
    public void The_longest_content_arrives_and_a_longer_one_is_no_frame()
    {
        FrameEncoder encoder = new();
        byte[] wire = encoder.Frame[..encoder.Encode(new Filled(1151))];
        FrameDecoder decoder = new();
        Assert.Equal(wire.Length, decoder.Accept(wire, 0, wire.Length));
        Assert.True(decoder.IsComplete);
        decoder.Content.Position += 1151;
        Assert.Equal(7, decoder.Content.ReadByte());
        Assert.Equal(0, decoder.Content.Remaining);
        Assert.Equal(0, encoder.Encode(new Filled(1152)));
        Assert.NotEqual(0, encoder.Encode(new Filled(1)));
    }

    [Fact]
    public void One_damaged_byte_at_any_place_costs_one_frame_or_two_at_the_delimiter_and_gives_no_wrong_one()
    {
        List<byte> stream = [];
        List<byte[]> sent = [];
        for (int i = 0; i < 12; i++)
        {
            LinkData data = Data(i, 40);
            sent.Add(data.Payload[..40]);
            stream.AddRange(Frame(data));
        }

        byte[] clean = [.. stream];
        Random random = new(Seed);
        for (int at = 0; at < clean.Length; at++)
        {
            byte[] damaged = [.. clean];
            damaged[at] ^= (byte)random.Next(1, 256);
            List<byte[]> received = Receive(damaged, new FrameDecoder());
            int lost = sent.Count - received.Count;
            Assert.True(lost <= (clean[at] == FrameFormat.Delimiter ? 2 : 1), $"seed {Seed}, byte {at}: {lost} frames lost");
            Assert.All(received, payload => Assert.Contains(payload, sent));
        }
    }

    [Fact]
    public void Noise_before_a_delimiter_is_counted_and_the_next_frame_arrives()
    {
        FrameDecoder decoder = new();
        Assert.Empty(Receive([1, 2, 3, 4, 5, FrameFormat.Delimiter], decoder));
        Assert.Equal(1, decoder.DamagedFrames);
        Assert.Equal(5, decoder.DamagedBytes);
        Assert.Single(Receive(Frame(Data(0, 20)), decoder));
    }

    [Fact]
    public void An_endless_stream_without_a_delimiter_fills_no_memory_and_does_no_harm()
    {
        FrameDecoder decoder = new();
        for (int i = 0; i < 1_000_000; i++)
        {
            Assert.False(decoder.Accept((byte)(i % 100)));
        }

        Assert.Empty(Receive([FrameFormat.Delimiter], decoder));
        Assert.Single(Receive(Frame(Data(0, 20)), decoder));
    }

    [Fact]
    public void Taken_in_stretches_of_any_length_a_stream_gives_what_it_gives_byte_by_byte()
    {
        Random random = new(Seed);
        for (int n = 0; n < 400; n++)
        {
            byte[] wire = DamagedStream(random);
            FrameDecoder single = new();
            List<byte[]> expected = Receive(wire, single);
            FrameDecoder stretches = new();
            List<byte[]> received = ReceiveStretches(wire, stretches, random);
            Assert.True(expected.Count == received.Count, $"seed {Seed}, stream {n}: {received.Count} frames in place of {expected.Count}");
            Assert.All(expected, (payload, i) => Assert.Equal(payload, received[i]));
            Assert.Equal((single.Frames, single.DamagedFrames, single.DamagedBytes), (stretches.Frames, stretches.DamagedFrames, stretches.DamagedBytes));
        }
    }

    private sealed class Filled(int length) : IMessage
    {
        public MessageCode Code => MessageCode.Data;

        public void Write(ByteWriter writer)
        {
            for (int i = 0; i < length; i++)
            {
                writer.WriteByte(7);
            }
        }

        public bool TryRead(ByteReader reader) => false;
    }

    private static byte[] DamagedStream(Random random)
    {
        List<byte> stream = [];
        for (int i = random.Next(1, 8); i > 0; i--)
        {
            byte[] frame = Frame(Data(i, random.Next(1, LinkData.MaxPayload + 1)));
            for (int hit = random.Next(-3, 4); hit > 0; hit--)
            {
                frame[random.Next(frame.Length)] = random.Next(2) == 0 ? FrameFormat.Delimiter : (byte)random.Next(256);
            }

            stream.AddRange(frame);
        }

        // A stretch that no frame is as long as.
        stream.InsertRange(random.Next(stream.Count), new byte[random.Next(4) == 0 ? 2 * FrameFormat.MaxFrame : 0]);
        return [.. stream];
    }

    private static List<byte[]> ReceiveStretches(byte[] wire, FrameDecoder decoder, Random random)
    {
        List<byte[]> payloads = [];
        LinkData data = new();
        int at = 0;
        while (at < wire.Length)
        {
            at = decoder.Accept(wire, at, Math.Min(wire.Length, at + random.Next(1, 3000)));
            if (decoder.IsComplete)
            {
                Assert.Equal((byte)MessageCode.Data, decoder.Content.ReadByte());
                Assert.True(data.TryRead(decoder.Content));
                payloads.Add(data.Payload[..data.Length]);
            }
        }

        return payloads;
    }

    private static LinkData Data(int number, int length)
    {
        LinkData data = new() { Tag = 1, Offset = (uint)number, Length = length };
        new Random(Seed + number).NextBytes(data.Payload.AsSpan(0, length));
        return data;
    }

    private static byte[] Frame(LinkData data)
    {
        FrameEncoder encoder = new();
        int length = encoder.Encode(data);
        return encoder.Frame[..length];
    }

    private static List<byte[]> Receive(byte[] wire, FrameDecoder decoder)
    {
        List<byte[]> payloads = [];
        LinkData data = new();
        foreach (byte value in wire)
        {
            if (decoder.Accept(value))
            {
                Assert.Equal((byte)MessageCode.Data, decoder.Content.ReadByte());
                Assert.True(data.TryRead(decoder.Content));
                payloads.Add(data.Payload[..data.Length]);
            }
        }

        return payloads;
    }
}
