using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Logger: this range, and all that was asked for before it, has been sent. What did not arrive is asked for again.</summary>
    public sealed class FetchEnd : IMessage
    {
        public uint SessionNumber;
        public uint Offset;
        /// <summary>Bytes that were sent: fewer than asked for at the end of the session.</summary>
        public uint Length;

        /// <summary>CRC-32C of the range.</summary>
        public uint Crc;

        /// <summary>Of the request for it.</summary>
        public byte Tag;

        public MessageCode Code => MessageCode.FetchEnd;

        public void Write(ByteWriter writer)
        {
            writer.WriteUInt32(SessionNumber);
            writer.WriteUInt32(Offset);
            writer.WriteUInt32(Length);
            writer.WriteUInt32(Crc);
            writer.WriteByte(Tag);
        }

        public bool TryRead(ByteReader reader)
        {
            SessionNumber = reader.ReadUInt32();
            Offset = reader.ReadUInt32();
            Length = reader.ReadUInt32();
            Crc = reader.ReadUInt32();
            Tag = reader.ReadByte();
            return !reader.TooShort;
        }
    }
}
