namespace LoggerBox.Capture.Speed
{
    /// <summary>
    /// The last edges, oldest overwritten, with running sums of them: those of any stretch are a difference. The sums run on for ever and wrap around; what is
    /// made of their differences stays exact, wherever time and count began.
    /// </summary>
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

        /// <summary>Up to each edge: of times, of counts, of their squares and of their products.</summary>
        public readonly long[] SumsT = new long[Capacity];
        public readonly long[] SumsC = new long[Capacity];
        public readonly long[] SumsCC = new long[Capacity];
        public readonly long[] SumsTC = new long[Capacity];
        public readonly long[] SumsTT = new long[Capacity];

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
            Sum(Newest);
        }

        /// <summary>What was taken for lost or for extra ones was neither: each edge has the count that was seen.</summary>
        public void CountAsSeen()
        {
            for (int back = Held - 1; back >= 0; back--)
            {
                int i = Back(back);
                Counts[i] = Seen[i];
                Sum(i);
            }
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
            Sum(at);
        }

        /// <summary>Place of the edge that came so many before the newest.</summary>
        public int Back(int edges) => (Newest - edges) & Mask;

        private void Sum(int at)
        {
            int before = (at - 1) & Mask;
            long time = Times[at];
            long count = Counts[at];
            SumsT[at] = SumsT[before] + time;
            SumsC[at] = SumsC[before] + count;
            SumsCC[at] = SumsCC[before] + (count * count);
            SumsTC[at] = SumsTC[before] + (time * count);
            SumsTT[at] = SumsTT[before] + (time * time);
        }
    }
}
