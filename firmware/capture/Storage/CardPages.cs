namespace LoggerBox.Capture.Storage
{
    /// <summary>A store seen as pages: what stands in each, one at a time.</summary>
    internal sealed class CardPages
    {
        /// <summary>Bytes that one write takes at most: long enough for any record, short enough for one step.</summary>
        public const int LongestWrite = 4096;

        public readonly IRecordStore Store;
        public readonly int PageLength;

        /// <summary>Bytes of records that fit into a page.</summary>
        public readonly int PayloadLength;

        /// <summary>Pages of the longest block: as many can be spoiled by one cut.</summary>
        public readonly int LongestBlock;

        /// <summary>The header of the page that was looked at last; only good when that was one of ours.</summary>
        public readonly PageHeader Header = new PageHeader();

        /// <summary>The log's present generation: pages of any other are left from an older log.</summary>
        public uint Generation;

        /// <summary>The highest numbers that any page showed, older ones too: none is ever given again.</summary>
        public uint HighestNumber;
        public ushort HighestBootCount;

        private readonly byte[] bytes;

        public CardPages(IRecordStore store)
        {
            Store = store;
            PageLength = store.PageLength;
            PayloadLength = PageLength - PageHeader.Length;
            LongestBlock = LongestWrite / PageLength;
            bytes = new byte[PageLength];
        }

        public int Count => (int)(Store.Capacity / PageLength);

        /// <summary>Pages that may have been written.</summary>
        public int Written => (int)((Store.Length + PageLength - 1) / PageLength);

        /// <summary>What a page is, by its header.</summary>
        public PageState Look(int page)
        {
            int read = Store.Read((long)page * PageLength, bytes, 0, PageHeader.Length);
            if (read == PageHeader.Length && Header.TryRead(bytes, 0, page) && Header.Used <= PayloadLength)
            {
                HighestNumber = Header.SessionNumber > HighestNumber ? Header.SessionNumber : HighestNumber;
                HighestBootCount = Header.BootCount > HighestBootCount ? Header.BootCount : HighestBootCount;
                return Header.Generation == Generation ? PageState.Ours : PageState.Older;
            }

            return IsOneByte(read) ? PageState.Blank : PageState.Unreadable;
        }

        /// <summary>True where nothing was ever written, in no part of the page.</summary>
        public bool IsBlank(int page) => IsOneByte(Store.Read((long)page * PageLength, bytes, 0, PageLength));

        /// <summary>Bytes of records from a page, after <see cref="Look"/>; what cannot be read is zero.</summary>
        public void ReadPayload(int page, int from, byte[] buffer, int offset, int count)
        {
            int read = Store.Read(((long)page * PageLength) + PageHeader.Length + from, buffer, offset, count);
            if (read < count)
            {
                System.Array.Clear(buffer, offset + read, count - read);
            }
        }

        // Erased flash reads as ones, a new file as zeros.
        private bool IsOneByte(int count)
        {
            byte first = count == 0 ? (byte)0 : bytes[0];
            int i = 0;
            while (i < count && bytes[i] == first)
            {
                i++;
            }

            return i == count && (first == 0 || first == 0xFF);
        }
    }

    internal enum PageState
    {
        /// <summary>Of the present log.</summary>
        Ours,

        /// <summary>Of a log that was given up: free.</summary>
        Older,

        /// <summary>The header was never written: free, unless something stands behind it.</summary>
        Blank,

        /// <summary>Spoiled by a cut, or damaged later.</summary>
        Unreadable,
    }
}
