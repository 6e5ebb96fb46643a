using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>One session in the logger's list.</summary>
    public sealed class SessionEntry
    {
        public const int WireLength = 11;

        private const byte EndedFlag = 1;
        private const byte ConfirmedFlag = 2;
        private const byte RecordingFlag = 4;

        public uint Number;
        public ushort BootCount;
        public uint Length;

        /// <summary>Closed in order; a session neither ended nor recording was cut by a loss of power.</summary>
        public bool Ended;
        public bool Confirmed;

        /// <summary>It still grows.</summary>
        public bool Recording;

        public void Write(ByteWriter writer)
        {
            writer.WriteUInt32(Number);
            writer.WriteUInt16(BootCount);
            writer.WriteUInt32(Length);
            int flags = (Ended ? EndedFlag : 0) | (Confirmed ? ConfirmedFlag : 0) | (Recording ? RecordingFlag : 0);
            writer.WriteByte((byte)flags);
        }

        public void Read(ByteReader reader)
        {
            Number = reader.ReadUInt32();
            BootCount = reader.ReadUInt16();
            Length = reader.ReadUInt32();
            int flags = reader.ReadByte();
            Ended = (flags & EndedFlag) != 0;
            Confirmed = (flags & ConfirmedFlag) != 0;
            Recording = (flags & RecordingFlag) != 0;
        }
    }
}
