namespace LoggerBox.Capture.Storage
{
    /// <summary>
    /// Reads a session's bytes out of its pages. A page that cannot be read is a gap: its bytes are zero, and there are exactly as many of
    /// them as were lost, because the next page says where it stands. Reading on is cheap; the first look halves the session.
    /// </summary>
    internal sealed class SessionBytes
    {
        private readonly CardPages pages;
        private LoggedSession? session;
        private int page;
        private uint pageStart;
        private uint pageEnd;
        private int nextPage;
        private uint nextStart;
        private int nextUsed;

        public SessionBytes(CardPages pages)
        {
            this.pages = pages;
        }

        /// <summary>To be called when the card has changed.</summary>
        public void Forget() => session = null;

        /// <summary>The range must lie inside the session.</summary>
        public void Read(LoggedSession source, uint offset, byte[] buffer, int bufferOffset, int count)
        {
            int done = 0;
            while (done < count)
            {
                uint at = offset + (uint)done;
                Seek(source, at);
                uint end = at < pageEnd ? pageEnd : nextStart;
                int part = end - at < (uint)(count - done) ? (int)(end - at) : count - done;
                if (at < pageEnd)
                {
                    pages.ReadPayload(page, (int)(at - pageStart), buffer, bufferOffset + done, part);
                }
                else
                {
                    System.Array.Clear(buffer, bufferOffset + done, part);
                }

                done += part;
            }
        }

        // Makes the page current that holds this byte, or after which it is missing.
        private void Seek(LoggedSession source, uint offset)
        {
            if (session != source || offset < pageStart)
            {
                session = source;
                Halve(source, offset);
                FindNext(source);
            }

            while (offset >= nextStart)
            {
                page = nextPage;
                pageStart = nextStart;
                pageEnd = pageStart + (uint)nextUsed;
                FindNext(source);
            }
        }

        private void Halve(LoggedSession source, uint offset)
        {
            page = source.StartPage - 1;
            pageStart = 0;
            pageEnd = 0;
            int low = source.StartPage;
            int high = source.LastPage + 1;
            while (low < high)
            {
                int found = low + ((high - low) / 2);
                int middle = found;
                while (found < high && !Belongs(source, found))
                {
                    found++;
                }

                if (found < high && pages.Header.SessionOffset <= offset)
                {
                    page = found;
                    pageStart = pages.Header.SessionOffset;
                    pageEnd = pageStart + (uint)pages.Header.Used;
                    low = found + 1;
                }
                else
                {
                    high = middle;
                }
            }
        }

        private void FindNext(LoggedSession source)
        {
            nextPage = page + 1;
            while (nextPage <= source.LastPage && !Belongs(source, nextPage))
            {
                nextPage++;
            }

            nextStart = nextPage <= source.LastPage ? pages.Header.SessionOffset : source.Length;
            nextUsed = pages.Header.Used;
        }

        private bool Belongs(LoggedSession source, int candidate) =>
            pages.Look(candidate) == PageState.Ours && pages.Header.SessionNumber == source.Number && pages.Header.Kind == PageKind.Session;
    }
}
