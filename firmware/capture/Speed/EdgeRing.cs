namespace LoggerBox.Capture.Speed
{
    /// <summary>The last edges, oldest overwritten.</summary>
    internal sealed class EdgeRing
    {
        public const int Capacity = 64;
        public const int Mask = Capacity - 1;

        public readonly long[] Times = new long[Capacity];
        public readonly long[] Counts = new long[Capacity];

        public int Newest { get; private set; }

        public void Add(long time, long count)
        {
            Newest = (Newest + 1) & Mask;
            Times[Newest] = time;
            Counts[Newest] = count;
        }

        /// <summary>Place of the edge that came so many before the newest.</summary>
        public int Back(int edges) => (Newest - edges) & Mask;
    }
}
