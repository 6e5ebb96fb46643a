using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Logger: bytes of a session. Which they are stands in each frame, so that frames may be lost, repeated or late.</summary>
    public sealed class Data : IMessage
    {
        public const int MaxPayload = 1024;

        /// <summary>Of the request that this answers; it says which session. A whole number here would cost two per cent of a bad line.</summary>
        public byte Tag;
        public uint Offset;
        public int Length;
        public readonly byte[] Payload = new byte[MaxPayload];

        public MessageCode Code => MessageCode.Data;

        public void Write(ByteWriter writer)
        {
            writer.WriteByte(Tag);
            writer.WriteUInt32(Offset);
            writer.WriteBytes(Payload, 0, Length);
        }

        /// <summary>The payload is the rest of the frame: this message can never have fields appended.</summary>
        public bool TryRead(ByteReader reader)
        {
            Tag = reader.ReadByte();
            Offset = reader.ReadUInt32();
            Length = reader.Remaining;
            if (reader.TooShort || Length > MaxPayload)
            {
                Length = 0;
                return false;
            }

            reader.ReadBytes(Payload, 0, Length);
            return true;
        }
    }
}
