namespace LoggerBox.Capture.Storage
{
    /// <summary>
    /// Finds the log's last page without reading all of them. The present generation fills the card from its first page on; older ones, or
    /// nothing, follow. So the border is found by halving. One write that the card lost, or one that was cut, can hide as many pages as
    /// a block has: nothing is concluded from fewer in a row.
    /// </summary>
    internal sealed class LogTail
    {
        /// <summary>The last page of the present generation; -1 where there is none.</summary>
        public int LastPage;

        /// <summary>Where the next block goes: never onto a page that may hold what was stored and cannot be read just now.</summary>
        public int NextPage;

        /// <summary>Where a log that is begun again begins: behind what may be a beginning that cannot be read just now.</summary>
        public int FirstPage;

        private readonly CardPages pages;

        public LogTail(CardPages pages)
        {
            this.pages = pages;
        }

        public void Find()
        {
            pages.Generation = NewestGeneration();
            int low = 0;
            int high = pages.Written;

            // Most cards end where their log ends: look there first.
            int middle = high - pages.LongestBlock - 1;
            while (high - low > 2 * pages.LongestBlock)
            {
                int found = OursFrom(middle, high);
                low = found < 0 ? low : found;
                high = found < 0 ? middle : high;
                middle = low + ((high - low) / 2);
            }

            LastPage = high - 1;
            while (LastPage >= low && pages.Look(LastPage) != PageState.Ours)
            {
                LastPage--;
            }

            NextPage = AfterSpoiled(LastPage + 1);
            FirstPage = AfterSpoiled(0);
            if (LastPage < low && pages.Generation > 0)
            {
                LookAtAll();
            }
        }

        // The first page of a new log was there a moment ago and is not now: the older pages behind it know which numbers were given.
        private void LookAtAll()
        {
            int written = pages.Written;
            for (int page = 0; page < written; page++)
            {
                pages.Look(page);
            }
        }

        // The newest log begins with the first page. That page may be one that the card lost, so a block's length of them is asked.
        private uint NewestGeneration()
        {
            uint newest = 0;
            int known = 0;
            int written = pages.Written;
            for (int page = 0; page < written && known <= pages.LongestBlock; page++)
            {
                PageState state = pages.Look(page);
                known += state == PageState.Unreadable ? 0 : 1;
                bool hasHeader = state == PageState.Ours || state == PageState.Older;
                newest = hasHeader && pages.Header.Generation > newest ? pages.Header.Generation : newest;
            }

            return newest;
        }

        private int OursFrom(int from, int end)
        {
            int others = 0;
            for (int page = from; page < end && others <= pages.LongestBlock; page++)
            {
                PageState state = pages.Look(page);
                if (state == PageState.Ours)
                {
                    return page;
                }

                others += state == PageState.Unreadable ? 0 : 1;
            }

            return -1;
        }

        // One cut spoils a block at most; what looks spoiled for longer was never ours.
        private int AfterSpoiled(int page)
        {
            int end = page + pages.LongestBlock;
            end = end < pages.Written ? end : pages.Written;
            while (page < end && IsSpoiled(page))
            {
                page++;
            }

            return page;
        }

        private bool IsSpoiled(int page)
        {
            PageState state = pages.Look(page);
            return state == PageState.Unreadable || (state == PageState.Blank && !pages.IsBlank(page));
        }
    }
}
