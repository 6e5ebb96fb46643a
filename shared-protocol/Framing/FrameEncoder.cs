using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Framing
{
    /// <summary>Makes one frame at a time in buffers of its own: Begin, write the content, End.</summary>
    public sealed class FrameEncoder
    {
        /// <summary>The frame as it goes on the line; valid from End to the next Begin.</summary>
        public readonly byte[] Frame = new byte[FrameFormat.MaxFrame];

        private readonly byte[] content = new byte[FrameFormat.MaxContent + FrameFormat.CrcLength];
        private readonly ByteWriter writer;

        public FrameEncoder()
        {
            writer = new ByteWriter(content);
        }

        public ByteWriter Begin()
        {
            writer.Restart(0, FrameFormat.MaxContent);
            return writer;
        }

        /// <summary>Length of the finished frame, delimiter included; 0 when the content did not fit.</summary>
        public int End()
        {
            if (writer.Overflowed)
            {
                return 0;
            }

            int length = writer.Position;
            uint crc = Crc32.Of(content, 0, length);
            writer.Restart(length, content.Length);
            writer.WriteUInt32(crc);
            int stuffed = Cobs.Encode(content, 0, length + FrameFormat.CrcLength, Frame, 0, FrameFormat.Delimiter);
            Frame[stuffed] = FrameFormat.Delimiter;
            return stuffed + 1;
        }
    }
}
