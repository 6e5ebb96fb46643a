using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Host: the session is stored whole and safe, and these are its length and CRC-32C.</summary>
    public sealed class Confirm : IMessage
    {
        public uint SessionNumber;
        public uint Length;
        public uint Crc;

        public MessageCode Code => MessageCode.Confirm;

        public void Write(ByteWriter writer)
        {
            writer.WriteUInt32(SessionNumber);
            writer.WriteUInt32(Length);
            writer.WriteUInt32(Crc);
        }

        public bool TryRead(ByteReader reader)
        {
            SessionNumber = reader.ReadUInt32();
            Length = reader.ReadUInt32();
            Crc = reader.ReadUInt32();
            return !reader.TooShort;
        }
    }
}
