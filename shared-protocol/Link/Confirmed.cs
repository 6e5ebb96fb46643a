using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Logger: length and CRC agree with what it holds; it may give the session up when it needs the room.</summary>
    public sealed class Confirmed : IMessage
    {
        public uint SessionNumber;

        public MessageCode Code => MessageCode.Confirmed;

        public void Write(ByteWriter writer)
        {
            writer.WriteUInt32(SessionNumber);
        }

        public bool TryRead(ByteReader reader)
        {
            SessionNumber = reader.ReadUInt32();
            return !reader.TooShort;
        }
    }
}
