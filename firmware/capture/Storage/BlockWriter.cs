namespace LoggerBox.Capture.Storage
{
    /// <summary>Gathers records into pages and writes them with one call: they are all safe then, or none of them counts.</summary>
    internal sealed class BlockWriter
    {
        /// <summary>Bytes of records that were gathered.</summary>
        public int Length;

        private readonly CardPages pages;
        private readonly byte[] bytes = new byte[CardPages.LongestWrite];
        private readonly PageHeader header = new PageHeader();

        public BlockWriter(CardPages pages)
        {
            this.pages = pages;
        }

        /// <summary>Pages that the block takes with so many more bytes.</summary>
        public int PagesWith(int count) => (Length + count + pages.PayloadLength - 1) / pages.PayloadLength;

        public bool Fits(int count) => PagesWith(count) <= pages.LongestBlock;

        public void Add(byte[] record, int count)
        {
            int done = 0;
            while (done < count)
            {
                int page = Length / pages.PayloadLength;
                int within = Length % pages.PayloadLength;
                int part = pages.PayloadLength - within;
                part = part < count - done ? part : count - done;
                System.Array.Copy(record, done, bytes, (page * pages.PageLength) + PageHeader.Length + within, part);
                done += part;
                Length += part;
            }
        }

        /// <summary>Writes the block from this page on, and is empty afterwards. False when it is not sure to be there.</summary>
        public bool TryWrite(int page, PageKind kind, LoggedSession session, int sessionStart, uint sessionOffset)
        {
            int count = PagesWith(0);
            int left = Length;
            header.Kind = kind;
            header.Generation = pages.Generation;
            header.SessionNumber = session.Number;
            header.BootCount = session.BootCount;
            header.SessionStart = sessionStart;
            for (int i = 0; i < count; i++)
            {
                header.IndexInBlock = i;
                header.Used = left < pages.PayloadLength ? left : pages.PayloadLength;
                header.SessionOffset = sessionOffset + (uint)(i * pages.PayloadLength);
                header.Write(bytes, i * pages.PageLength, page + i);
                left -= header.Used;
            }

            int padding = (count * pages.PayloadLength) - Length;
            System.Array.Clear(bytes, (count * pages.PageLength) - padding, padding);
            Length = 0;
            return pages.Write(page, bytes, count * pages.PageLength);
        }
    }
}
