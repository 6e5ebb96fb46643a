using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Host: this is the time.</summary>
    public sealed class SetClock : IMessage
    {
        /// <summary>Seconds since 1970 UTC.</summary>
        public uint UtcSeconds;

        public MessageCode Code => MessageCode.SetClock;

        public void Write(ByteWriter writer)
        {
            writer.WriteUInt32(UtcSeconds);
        }

        public bool TryRead(ByteReader reader)
        {
            UtcSeconds = reader.ReadUInt32();
            return !reader.TooShort;
        }
    }
}
