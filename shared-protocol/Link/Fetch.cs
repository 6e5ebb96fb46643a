using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Host: send this range of a session, after those that were asked for before.</summary>
    public sealed class Fetch : IMessage
    {
        public uint SessionNumber;
        public uint Offset;
        /// <summary>Bytes wanted; what lies past the end of the session is left out.</summary>
        public uint Length;

        /// <summary>Bytes of the session in one frame, at most <see cref="Data.MaxPayload"/>: short where the line is bad.</summary>
        public ushort PayloadLength;

        /// <summary>The host's own count of its requests; comes back in each frame of this range.</summary>
        public byte Tag;

        /// <summary>A FetchEnd follows the last byte of this range: nothing is asked for after it that would show what got lost.</summary>
        public bool EndWanted;

        public MessageCode Code => MessageCode.Fetch;

        public void Write(ByteWriter writer)
        {
            writer.WriteUInt32(SessionNumber);
            writer.WriteUInt32(Offset);
            writer.WriteUInt32(Length);
            writer.WriteUInt16(PayloadLength);
            writer.WriteByte(Tag);
            writer.WriteBoolean(EndWanted);
        }

        public bool TryRead(ByteReader reader)
        {
            SessionNumber = reader.ReadUInt32();
            Offset = reader.ReadUInt32();
            Length = reader.ReadUInt32();
            PayloadLength = reader.ReadUInt16();
            Tag = reader.ReadByte();
            EndWanted = reader.ReadBoolean();
            return !reader.TooShort;
        }
    }
}
