namespace LoggerBox.Capture.Speed
{
    /// <summary>The last edges, oldest overwritten.</summary>
    internal sealed class EdgeRing
    {
        public const int Capacity = 64;
        public const int Mask = Capacity - 1;

        /// <summary>Where each edge is taken to be, and how many were counted by then.</summary>
        public readonly long[] Times = new long[Capacity];
        public readonly long[] Counts = new long[Capacity];

        /// <summary>What the counter said: no edge taken for lost, none left out.</summary>
        public readonly long[] Seen = new long[Capacity];

        /// <summary>The polls between which it was.</summary>
        public readonly long[] Begins = new long[Capacity];
        public readonly long[] Ends = new long[Capacity];

        public int Newest;

        /// <summary>Edges that are there; those before them say nothing any more.</summary>
        public int Held;

        public void Clear() => Held = 0;

        /// <summary>Begins anew with the newest, which has this count.</summary>
        public void KeepNewest(long count)
        {
            Held = 1;
            Counts[Newest] = count;
            Seen[Newest] = count;
        }

        public void Add(long time, long count, long seen, long begin, long end)
        {
            int at = (Newest + 1) & Mask;
            Newest = at;
            Held += Held < Capacity ? 1 : 0;
            Times[at] = time;
            Counts[at] = count;
            Seen[at] = seen;
            Begins[at] = begin;
            Ends[at] = end;
        }

        /// <summary>Place of the edge that came so many before the newest.</summary>
        public int Back(int edges) => (Newest - edges) & Mask;
    }
}
