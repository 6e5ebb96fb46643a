using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Host: which sessions are there, from this index on? Asked again from the next index until all are told.</summary>
    public sealed class List : IMessage
    {
        public ushort FirstIndex;

        public MessageCode Code => MessageCode.List;

        public void Write(ByteWriter writer)
        {
            writer.WriteUInt16(FirstIndex);
        }

        public bool TryRead(ByteReader reader)
        {
            FirstIndex = reader.ReadUInt16();
            return !reader.TooShort;
        }
    }
}
