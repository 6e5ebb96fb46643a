using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;

namespace LoggerBox.SelfTest.Cases
{
    /// <summary>Check values of both CRCs, byte stuffing there and back at the lengths where its runs end, frames over a noisy line.</summary>
    internal sealed class FramingCase : SelfTestCase
    {
        private const int Longest = 600;

        private readonly byte[] plain = new byte[Longest];
        private readonly byte[] stuffed = new byte[Longest + 8];
        private readonly Noise noise = new Noise(1);

        public FramingCase()
            : base("framing")
        {
        }

        public override void Execute()
        {
            byte[] nine = { 0x31, 0x32, 0x33, 0x34, 0x35, 0x36, 0x37, 0x38, 0x39 };
            ExpectNumber(0xCBF43926, Crc32.Of(nine, 0, nine.Length), "CRC-32");
            ExpectNumber(0xE3069283, Crc32C.Append(Crc32C.Start, nine, 0, nine.Length), "CRC-32C");
            for (int length = 0; length < Longest; length += length < 6 ? 1 : 31)
            {
                Stuff(length, 0xFF);
                Stuff(length, 0x01);
            }

            Stuff(Cobs.LongestRun, 0);
            SendFrames();
        }

        private void Stuff(int length, int mask)
        {
            noise.Fill(plain, length, mask);
            int count = Cobs.Encode(plain, 0, length, stuffed, 0, FrameFormat.Delimiter);
            Expect(count <= Cobs.LongestEncoding(length), "stuffing grew");
            CobsDecoder decoder = new CobsDecoder(Longest, FrameFormat.Delimiter);
            for (int i = 0; i < count; i++)
            {
                Expect(!decoder.Accept(stuffed[i]), "a delimiter inside");
            }

            Expect(decoder.Accept(FrameFormat.Delimiter) && decoder.IsSound, "stuffing not sound");
            ExpectNumber(length, decoder.DecodedLength, "unstuffed length");
            for (int i = 0; i < length && i < decoder.DecodedLength; i++)
            {
                Expect(decoder.Decoded[i] == plain[i], "another byte came back");
            }

            Digest.Add(stuffed, 0, count);
        }

        // Every third frame loses a byte or has one changed: it must not come out, and the one after it must.
        private void SendFrames()
        {
            FrameEncoder encoder = new FrameEncoder();
            FrameDecoder decoder = new FrameDecoder();
            Data data = new Data();
            for (int n = 0; n < 30; n++)
            {
                data.Tag = (byte)n;
                data.Length = 3 + (n * 34);
                noise.Fill(data.Payload, data.Length, 0xFF);
                int length = encoder.Encode(data);
                Digest.Add(encoder.Frame, 0, length);
                int hurt = n % 3 == 2 ? noise.Next() % (length - 1) : -1;
                for (int i = 0; i < length; i++)
                {
                    if (i != hurt || n % 2 == 0)
                    {
                        decoder.Accept(i == hurt ? (byte)(encoder.Frame[i] ^ 0x10) : encoder.Frame[i]);
                    }
                }
            }

            ExpectNumber(20, decoder.Frames, "frames");
            Digest.AddNumber(decoder.DamagedFrames);
            Digest.AddNumber(decoder.DamagedBytes);
        }
    }
}
