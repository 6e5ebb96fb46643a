using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Logger: some of its sessions, in the order in which it recorded them.</summary>
    public sealed class SessionList : IMessage
    {
        public const int MaxEntries = 64;

        /// <summary>Sessions that the logger has in all.</summary>
        public ushort Total;
        public ushort FirstIndex;
        public int Count;
        public readonly SessionEntry[] Entries = new SessionEntry[MaxEntries];

        public SessionList()
        {
            for (int i = 0; i < MaxEntries; i++)
            {
                Entries[i] = new SessionEntry();
            }
        }

        public MessageCode Code => MessageCode.SessionList;

        public void Write(ByteWriter writer)
        {
            writer.WriteUInt16(Total);
            writer.WriteUInt16(FirstIndex);
            writer.WriteByte((byte)Count);
            for (int i = 0; i < Count; i++)
            {
                Entries[i].Write(writer);
            }
        }

        public bool TryRead(ByteReader reader)
        {
            Total = reader.ReadUInt16();
            FirstIndex = reader.ReadUInt16();
            Count = reader.ReadByte();
            if (Count > MaxEntries)
            {
                Count = 0;
                return false;
            }

            for (int i = 0; i < Count; i++)
            {
                Entries[i].Read(reader);
            }

            return !reader.TooShort;
        }
    }
}
