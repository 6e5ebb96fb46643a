using LoggerBox.Protocol.Framing;

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

        public void Write(byte[] buffer, int offset, int page)
        {
            Put(buffer, offset, Mark | ((uint)Kind << 16) | ((uint)IndexInBlock << 24));
            Put(buffer, offset + 4, (uint)Used | ((uint)BootCount << 16));
            Put(buffer, offset + 8, Generation);
            Put(buffer, offset + 12, (uint)page);
            Put(buffer, offset + 16, SessionNumber);
            Put(buffer, offset + 20, (uint)SessionStart);
            Put(buffer, offset + 24, SessionOffset);
            Put(buffer, offset + CrcOffset, Crc32.Of(buffer, offset, CrcOffset));
        }

        /// <summary>False when this is no header or that of another page: what the fields say then is not to be used.</summary>
        public bool TryRead(byte[] buffer, int offset, int page)
        {
            // Read where it lies, and the checks that refuse most come first: a start of the logger looks at many pages.
            uint first = Get(buffer, offset);
            if ((ushort)first != Mark || Get(buffer, offset + 12) != (uint)page)
            {
                return false;
            }

            uint second = Get(buffer, offset + 4);
            Kind = (PageKind)(byte)(first >> 16);
            IndexInBlock = (int)(first >> 24);
            Used = (ushort)second;
            BootCount = (ushort)(second >> 16);
            Generation = Get(buffer, offset + 8);
            SessionNumber = Get(buffer, offset + 16);
            SessionStart = (int)Get(buffer, offset + 20);
            SessionOffset = Get(buffer, offset + 24);
            return Get(buffer, offset + CrcOffset) == Crc32.Of(buffer, offset, CrcOffset);
        }

        /// <summary>
        /// False when what it says does not fit the pages that it speaks of: a sound CRC says only that nothing changed it, not that a log
        /// wrote it. A session would be longer than its pages, or a block than what is read of it.
        /// </summary>
        public bool CanStand(int page, int pageLength)
        {
            int payload = pageLength - Length;
            int before = page - SessionStart;
            return SessionStart >= 0 && before >= IndexInBlock && IndexInBlock < CardPages.LongestWrite / pageLength && Used <= payload
                && SessionOffset >= (uint)(IndexInBlock * payload) && SessionOffset <= (long)before * payload;
        }

        private static void Put(byte[] buffer, int offset, uint value)
        {
            buffer[offset] = (byte)value;
            buffer[offset + 1] = (byte)(value >> 8);
            buffer[offset + 2] = (byte)(value >> 16);
            buffer[offset + 3] = (byte)(value >> 24);
        }

        private static uint Get(byte[] buffer, int offset) =>
            buffer[offset] | ((uint)buffer[offset + 1] << 8) | ((uint)buffer[offset + 2] << 16) | ((uint)buffer[offset + 3] << 24);
    }

    public enum PageKind : byte
    {
        Session = 1,

        /// <summary>The host's confirmation of a session; stands between sessions.</summary>
        Note = 2,
    }
}
