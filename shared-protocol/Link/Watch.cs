using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Host: tell me what you read, now and again and again for a while.</summary>
    public sealed class Watch : IMessage
    {
        /// <summary>Milliseconds between two readings, 100 at least; 0 ends it.</summary>
        public ushort IntervalMilliseconds;

        /// <summary>Seconds after which the logger stops by itself, 30 at most: a host that was unplugged does not ask it to.</summary>
        public byte ForSeconds;

        public MessageCode Code => MessageCode.Watch;

        public void Write(ByteWriter writer)
        {
            writer.WriteUInt16(IntervalMilliseconds);
            writer.WriteByte(ForSeconds);
        }

        public bool TryRead(ByteReader reader)
        {
            IntervalMilliseconds = reader.ReadUInt16();
            ForSeconds = reader.ReadByte();
            return !reader.TooShort;
        }
    }
}
