namespace LoggerBox.Capture.Speed
{
    /// <summary>
    /// What the polls themselves say of the period, without any statistics: an edge was after the poll before it and not after the poll
    /// that saw it, so two edges bound the period between them. Where all the bounds of the latest edges agree, the middle of what they leave
    /// is nearer to the truth than least squares come; where they don't, an edge was lost or is one too many, or the speed changes.
    /// </summary>
    internal sealed class PeriodBounds
    {
        /// <summary>So many edges must agree before they say more than a line through them.</summary>
        public const int FewestAgreeing = 4;

        // Bounds between edges that are near each other say little: the newest is held against the oldest of the window.
        private const int OldestEdges = 5;
        private const int LatestEdges = 8;
        private const long LatestMicroseconds = 300000;

        // As far as the bounds of the latest edges reach back, and a little farther.
        private const long SeenMicroseconds = 1000000;

        private readonly EdgeRing edges;
        private readonly EdgeWindow window;
        private readonly long[] shortest = new long[EdgeRing.Capacity];
        private readonly long[] longest = new long[EdgeRing.Capacity];
        private long boundLow;
        private long boundHigh;

        public PeriodBounds(EdgeRing edges, EdgeWindow window)
        {
            this.edges = edges;
            this.window = window;
        }

        /// <summary>Latest edges whose bounds agree; 0 where none are known.</summary>
        public int Agreeing;

        /// <summary>Between these the period lies, nanoseconds, if no edge was lost or is one too many.</summary>
        public long Shortest;

        public long Longest;

        public void Clear() => Agreeing = 0;

        /// <summary>To be called after the window has taken the ring's newest edge.</summary>
        public void TakeNewest()
        {
            int newest = edges.Newest;
            int places = window.Count / 2;
            if (places < 2)
            {
                Agreeing = 0;
                shortest[newest] = 0;
                longest[newest] = long.MaxValue;
                return;
            }

            boundLow = 0;
            boundHigh = long.MaxValue;
            Narrow(edges.Counts, edges.Back(window.Count - 1), places < OldestEdges ? places : OldestEdges, edges.Begins[newest], edges.Ends[newest], edges.Counts[newest]);
            shortest[newest] = boundLow;
            longest[newest] = boundHigh;
            Intersect(newest);
        }

        /// <summary>The same for an edge that is not looked at: nothing before it agrees with what comes after it.</summary>
        public void PassNewest()
        {
            Agreeing = 0;
            shortest[edges.Newest] = long.MaxValue;
            longest[edges.Newest] = 0;
        }

        /// <summary>A count that an edge between these polls can have, the one nearest to the one that was seen; -1 where it can have none.</summary>
        public long Allowed(long begin, long end, long seen)
        {
            // Mostly the edge can be the one that was seen: told without a division.
            if (IsAllowed(begin, end, seen))
            {
                return seen;
            }

            long least = 0;
            long most = long.MaxValue;
            int places = window.Count < OldestEdges ? window.Count : OldestEdges;
            int i = edges.Back(window.Count - 1);
            for (int n = 0; n < places && least <= most; n++)
            {
                long count = edges.Counts[i];
                long low = count + ((((begin - edges.Ends[i]) * 1000) + Longest - 1) / Longest);
                long high = count + ((end - edges.Begins[i]) * 1000 / Shortest);
                least = low > least ? low : least;
                most = high < most ? high : most;
                i = (i + 1) & EdgeRing.Mask;
            }

            return least > most ? -1 : seen < least ? least : seen > most ? most : seen;
        }

        private bool IsAllowed(long begin, long end, long seen)
        {
            long[] counts = edges.Counts;
            long[] begins = edges.Begins;
            long[] ends = edges.Ends;
            long shortestNow = Shortest;
            long longestNow = Longest;
            int places = window.Count < OldestEdges ? window.Count : OldestEdges;
            int i = edges.Back(window.Count - 1);
            for (int n = 0; n < places; n++)
            {
                long between = seen - counts[i];
                if (between * longestNow < (begin - ends[i]) * 1000 || between * shortestNow > (end - begins[i]) * 1000)
                {
                    return false;
                }

                i = (i + 1) & EdgeRing.Mask;
            }

            return true;
        }

        /// <summary>
        /// Some of the last second's edges were taken for lost or for extra ones, but all that the counter saw fits one period, with an edge
        /// between these polls that it would be the next of.
        /// </summary>
        public bool SeenAgrees(long begin, long end, long seen)
        {
            int newest = edges.Newest;
            int held = edges.Held;
            long[] ends = edges.Ends;
            long earliest = end - SeenMicroseconds;
            int oldest = 0;
            while (oldest < held - 1 && ends[(newest - oldest - 1) & EdgeRing.Mask] >= earliest)
            {
                oldest++;
            }

            int first = edges.Back(oldest);
            if (oldest < OldestEdges + LatestEdges || edges.Counts[newest] - edges.Seen[newest] == edges.Counts[first] - edges.Seen[first])
            {
                return false;
            }

            boundLow = 0;
            boundHigh = long.MaxValue;
            Narrow(edges.Seen, first, OldestEdges, begin, end, seen);
            for (int back = 0; back < LatestEdges && boundLow <= boundHigh; back++)
            {
                int i = edges.Back(back);
                Narrow(edges.Seen, first, OldestEdges, edges.Begins[i], edges.Ends[i], edges.Seen[i]);
            }

            return boundLow <= boundHigh;
        }

        // The edge against so many others.
        private void Narrow(long[] counts, int first, int places, long begin, long end, long count)
        {
            long[] begins = edges.Begins;
            long[] ends = edges.Ends;
            long low = boundLow;
            long high = boundHigh;
            int i = first;
            for (int n = 0; n < places; n++)
            {
                long between = count - counts[i];
                long least = (begin - ends[i]) * 1000 / between;
                long most = (end - begins[i]) * 1000 / between;
                low = least > low ? least : low;
                high = most < high ? most : high;
                i = (i + 1) & EdgeRing.Mask;
            }

            boundLow = low;
            boundHigh = high;
        }

        private void Intersect(int newest)
        {
            long low = 0;
            long high = long.MaxValue;
            long[] ends = edges.Ends;
            long[] shorts = shortest;
            long[] longs = longest;
            long oldest = ends[newest] - LatestMicroseconds;
            int most = window.Count < LatestEdges ? window.Count : LatestEdges;
            int agreeing = 0;
            int i = newest;
            while (agreeing < most && ends[i] >= oldest)
            {
                long least = shorts[i];
                least = least > low ? least : low;
                long longestSoFar = longs[i];
                longestSoFar = longestSoFar < high ? longestSoFar : high;
                if (least > longestSoFar)
                {
                    break;
                }

                low = least;
                high = longestSoFar;
                agreeing++;
                i = (i - 1) & EdgeRing.Mask;
            }

            Agreeing = agreeing;
            Shortest = low;
            Longest = high;
        }
    }
}
