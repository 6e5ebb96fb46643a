using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Framing
{
    /// <summary>Makes one frame at a time, in buffers of its own.</summary>
    public sealed class FrameEncoder
    {
        /// <summary>The frame as it goes on the line; valid until the next one is made.</summary>
        public readonly byte[] Frame = new byte[FrameFormat.MaxFrame];

        private readonly byte[] content = new byte[FrameFormat.MaxContent + FrameFormat.CrcLength];
        private readonly ByteWriter writer;

        public FrameEncoder()
        {
            writer = new ByteWriter(content);
        }

        /// <summary>Length of the finished frame, delimiter included; 0 when the message does not fit.</summary>
        public int Encode(IMessage message)
        {
            writer.Restart(0, FrameFormat.MaxContent);
            writer.WriteByte((byte)message.Code);
            message.Write(writer);
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
