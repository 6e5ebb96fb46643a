namespace LoggerBox.Capture.Storage
{
    /// <summary>A store seen as pages: what stands in each, one at a time.</summary>
    internal sealed class CardPages
    {
        /// <summary>Bytes that one write takes at most: long enough for any record, short enough for one step.</summary>
        public const int LongestWrite = 4096;

        public readonly int PageLength;

        /// <summary>Bytes of records that fit into a page.</summary>
        public readonly int PayloadLength;

        /// <summary>Pages of the longest block: as many can be spoiled by one cut.</summary>
        public readonly int LongestBlock;

        /// <summary>The header of the page that was looked at last; only good until the next look, and when that page has one.</summary>
        public PageHeader Header;

        /// <summary>The log's present generation: pages of any other are left from an older log.</summary>
        public uint Generation;

        /// <summary>The highest numbers that any page showed, older ones too: none is ever given again.</summary>
        public uint HighestNumber;
        public ushort HighestBootCount;

        // The pages that were looked at lately, each at its number's place: one look asks for its neighbours again, and a card is slow.
        private const int Remembered = 16;

        private readonly IRecordStore store;
        private readonly byte[] bytes;
        private readonly int[] pages = new int[Remembered];
        private readonly PageState[] states = new PageState[Remembered];
        private readonly PageHeader[] headers = new PageHeader[Remembered];

        public CardPages(IRecordStore store)
        {
            this.store = store;
            PageLength = store.PageLength;
            PayloadLength = PageLength - PageHeader.Length;
            LongestBlock = LongestWrite / PageLength;
            bytes = new byte[PageLength];
            for (int i = 0; i < Remembered; i++)
            {
                headers[i] = new PageHeader();
            }

            Header = headers[0];
            Forget();
        }

        public long Capacity => store.Capacity;

        public int Count => (int)(store.Capacity / PageLength);

        /// <summary>Pages that may have been written.</summary>
        public int Written => (int)((store.Length + PageLength - 1) / PageLength);

        /// <summary>To be called before a card is looked through: it may be another one.</summary>
        public void Forget()
        {
            for (int i = 0; i < Remembered; i++)
            {
                pages[i] = -1;
            }
        }

        /// <summary>Writes whole pages. True when they are safe.</summary>
        public bool Write(int page, byte[] buffer, int count)
        {
            Forget();
            return store.Write((long)page * PageLength, buffer, 0, count);
        }

        /// <summary>What a page is, by its header.</summary>
        public PageState Look(int page)
        {
            int place = page % Remembered;
            Header = headers[place];
            if (pages[place] != page)
            {
                states[place] = ReadHeader(page);
                pages[place] = page;
            }

            PageState state = states[place];
            return state == PageState.Ours && Header.Generation != Generation ? PageState.Older : state;
        }

        /// <summary>True where nothing was ever written, in no part of the page.</summary>
        public bool IsBlank(int page) => IsOneByte(store.Read((long)page * PageLength, bytes, 0, PageLength));

        /// <summary>Bytes of records from a page, after <see cref="Look"/>; what cannot be read is zero.</summary>
        public void ReadPayload(int page, int from, byte[] buffer, int offset, int count)
        {
            int read = store.Read(((long)page * PageLength) + PageHeader.Length + from, buffer, offset, count);
            if (read < count)
            {
                System.Array.Clear(buffer, offset + read, count - read);
            }
        }

        // Of which log it is changes with the generation that is asked for.
        private PageState ReadHeader(int page)
        {
            int read = store.Read((long)page * PageLength, bytes, 0, PageHeader.Length);
            if (read == PageHeader.Length && Header.TryRead(bytes, 0, page) && Header.CanStand(page, PageLength))
            {
                HighestNumber = Header.SessionNumber > HighestNumber ? Header.SessionNumber : HighestNumber;
                HighestBootCount = Header.BootCount > HighestBootCount ? Header.BootCount : HighestBootCount;
                return PageState.Ours;
            }

            return IsOneByte(read) ? PageState.Blank : PageState.Unreadable;
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
