using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Logger: bytes of a session. Which they are stands in each frame, so that frames may be lost, repeated or late.</summary>
    public sealed class Data : IMessage
    {
        public const int MaxPayload = 1024;

        /// <summary>
        /// Lowest byte of the session's number: enough to tell apart what comes late of the session before. Three bytes more in each
        /// frame cost two per cent of a bad line.
        /// </summary>
        public byte SessionByte;
        public uint Offset;
        public int Length;
        public readonly byte[] Payload = new byte[MaxPayload];

        public MessageCode Code => MessageCode.Data;

        public void Write(ByteWriter writer)
        {
            writer.WriteByte(SessionByte);
            writer.WriteUInt32(Offset);
            writer.WriteBytes(Payload, 0, Length);
        }

        /// <summary>The payload is the rest of the frame: this message can never have fields appended.</summary>
        public bool TryRead(ByteReader reader)
        {
            SessionByte = reader.ReadByte();
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
