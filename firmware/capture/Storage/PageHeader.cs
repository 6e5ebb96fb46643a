using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Storage
{
    /// <summary>
    /// Stands before the bytes of each page and says where they belong. It is the card's: neither cable nor archive ever see it. Its own
    /// place and the log's generation are inside the CRC, so that what is left of an older log, or was moved, is never taken.
    /// </summary>
    public sealed class PageHeader
    {
        public const int Length = 32;

        private const ushort Mark = 0x3AC9;
        private const int CrcOffset = Length - 4;

        public PageKind Kind;

        /// <summary>Counts the pages of a block: what one call of the store writes, and is safe when that has returned.</summary>
        public int IndexInBlock;

        /// <summary>Bytes of records in this page; the rest is padding. Only a block's last page has any.</summary>
        public int Used;

        /// <summary>Counts how often the log was begun again from the first page.</summary>
        public uint Generation;

        /// <summary>The session that the page belongs to; for a note, the last session before it.</summary>
        public uint SessionNumber;
        public ushort BootCount;

        /// <summary>Page that the session begins with.</summary>
        public int SessionStart;

        /// <summary>How many bytes of the session stand before this page's.</summary>
        public uint SessionOffset;

        private readonly byte[] bytes = new byte[Length];
        private readonly ByteReader reader;
        private readonly ByteWriter writer;

        public PageHeader()
        {
            reader = new ByteReader(bytes);
            writer = new ByteWriter(bytes);
        }

        public void Write(byte[] buffer, int offset, int page)
        {
            writer.Restart(0, Length);
            writer.WriteUInt16(Mark);
            writer.WriteByte((byte)Kind);
            writer.WriteByte((byte)IndexInBlock);
            writer.WriteUInt16((ushort)Used);
            writer.WriteUInt16(BootCount);
            writer.WriteUInt32(Generation);
            writer.WriteInt32(page);
            writer.WriteUInt32(SessionNumber);
            writer.WriteInt32(SessionStart);
            writer.WriteUInt32(SessionOffset);
            writer.WriteUInt32(Crc32.Of(bytes, 0, CrcOffset));
            System.Array.Copy(bytes, 0, buffer, offset, Length);
        }

        /// <summary>False, and nothing known, when this is no header or that of another page.</summary>
        public bool TryRead(byte[] buffer, int offset, int page)
        {
            if ((buffer[offset] | (buffer[offset + 1] << 8)) != Mark)
            {
                return false;
            }

            System.Array.Copy(buffer, offset, bytes, 0, Length);
            reader.Restart(2, Length - 2);
            Kind = (PageKind)reader.ReadByte();
            IndexInBlock = reader.ReadByte();
            Used = reader.ReadUInt16();
            BootCount = reader.ReadUInt16();
            Generation = reader.ReadUInt32();
            int ownPage = reader.ReadInt32();
            SessionNumber = reader.ReadUInt32();
            SessionStart = reader.ReadInt32();
            SessionOffset = reader.ReadUInt32();
            return ownPage == page && SessionStart <= page && IndexInBlock <= page
                && reader.ReadUInt32() == Crc32.Of(bytes, 0, CrcOffset);
        }
    }

    public enum PageKind : byte
    {
        Session = 1,

        /// <summary>The host's confirmation of a session; stands between sessions.</summary>
        Note = 2,
    }
}
