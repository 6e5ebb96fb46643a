namespace LoggerBox.Capture.Storage
{
    /// <summary>
    /// Finds what a card holds, from the log's last page backwards: each page names the first page of its session, before which the session
    /// before it ends. Only the end of a session can be unfinished, so only that is read. It writes nothing, so it can itself be cut.
    /// </summary>
    internal sealed class LogRecovery
    {
        /// <summary>Pages between sessions that cannot be read: spoiled by cuts, or damaged.</summary>
        public int UnreadablePages;

        /// <summary>Bytes at the ends of sessions that belong to no whole record.</summary>
        public long UnfinishedBytes;

        private readonly CardPages pages;
        private readonly BlockReader block;

        public LogRecovery(CardPages pages)
        {
            this.pages = pages;
            block = new BlockReader(pages);
        }

        public void Run(SessionTable table, int lastPage)
        {
            UnreadablePages = 0;
            UnfinishedBytes = 0;
            table.Clear();
            int page = lastPage;
            while (page >= 0)
            {
                page = TakeFrom(table, page) - 1;
            }

            table.Reverse();
            table.HighestBootCount = pages.HighestBootCount;
            TakeNotes(table, lastPage);
        }

        // The first of the pages that are accounted for by what stands in this one.
        private int TakeFrom(SessionTable table, int page)
        {
            if (pages.Look(page) != PageState.Ours)
            {
                UnreadablePages++;
                return page;
            }

            PageHeader header = pages.Header;
            if (header.Kind != PageKind.Session)
            {
                return page;
            }

            // A number stands twice where the first to get it was spoiled, and can be read again after all: it was never stored.
            int start = header.SessionStart;
            bool isLower = table.Count == 0 || header.SessionNumber < table.Last!.Number;
            if (isLower && !table.IsFull)
            {
                TakeSession(table, header.SessionNumber, start, page);
            }

            return start;
        }

        private void TakeSession(SessionTable table, uint number, int start, int page)
        {
            while (page >= start)
            {
                bool isSession = pages.Look(page) == PageState.Ours && pages.Header.SessionNumber == number;
                if (!isSession)
                {
                    page--;
                    continue;
                }

                ushort bootCount = pages.Header.BootCount;
                block.Read(page);
                UnfinishedBytes += block.Length - block.EndOfRecords;
                if (block.EndOfRecords > 0)
                {
                    LoggedSession session = table.Add(number, bootCount);
                    session.StartPage = start;
                    session.LastPage = page;
                    session.Length = block.SessionOffset + (uint)block.EndOfRecords;
                    session.Ended = block.HoldsEnd;
                    return;
                }

                page = block.FirstPage - 1;
            }
        }

        // Notes stand between sessions only.
        private void TakeNotes(SessionTable table, int lastPage)
        {
            for (int i = 0; i < table.Count; i++)
            {
                int end = i + 1 < table.Count ? table[i + 1].StartPage : lastPage + 1;
                for (int page = table[i].LastPage + 1; page < end; page++)
                {
                    if (pages.Look(page) == PageState.Ours && pages.Header.Kind == PageKind.Note && block.TryReadNote(page))
                    {
                        Confirm(table);
                    }
                }
            }
        }

        // A spoiled end that can be read again after all makes a session longer than what the host has: then it is to be fetched again.
        private void Confirm(SessionTable table)
        {
            LoggedSession? session = table.Find(block.Note.SessionNumber);
            if (session != null && session.Length <= block.Note.Length)
            {
                session.Confirmed = true;
            }
        }
    }
}
