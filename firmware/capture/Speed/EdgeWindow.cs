namespace LoggerBox.Capture.Speed
{
    /// <summary>
    /// The newest edges of a pickup: when each was, and how many were counted by then. The least-squares period over them costs the same
    /// few steps however many there are.
    /// </summary>
    internal sealed class EdgeWindow
    {
        private readonly EdgeRing edges;
        private readonly int fewest;
        private readonly long length;

        /// <param name="edges">Where they are kept.</param>
        /// <param name="fewest">So many are always looked at.</param>
        /// <param name="microseconds">All that are not older than this.</param>
        public EdgeWindow(EdgeRing edges, int fewest, long microseconds)
        {
            this.edges = edges;
            this.fewest = fewest;
            length = microseconds;
        }

        /// <summary>Edges in it; a field, for it is asked for several times with each edge.</summary>
        public int Count;

        /// <summary>From the oldest edge to the newest, microseconds.</summary>
        public long Microseconds => edges.Times[edges.Newest] - edges.Times[edges.Back(Count - 1)];

        /// <summary>Periods from the oldest edge to the newest.</summary>
        public long Periods => edges.Counts[edges.Newest] - edges.Counts[edges.Back(Count - 1)];

        public void Clear() => Count = 0;

        /// <summary>To be called after each edge that the ring has taken.</summary>
        public void TakeNewest()
        {
            int newest = edges.Newest;
            int kept = Count + 1;
            long[] times = edges.Times;
            long oldestToKeep = times[newest] - length;
            int oldest = (newest - Count) & EdgeRing.Mask;

            // The place before the oldest has the sums that are taken off.
            while (kept == EdgeRing.Capacity || (kept > fewest && times[oldest] < oldestToKeep))
            {
                kept--;
                oldest = (oldest + 1) & EdgeRing.Mask;
            }

            Count = kept;
        }

        /// <summary>Nanoseconds from edge to edge, or 0 where it cannot be told.</summary>
        public long PeriodNanoseconds()
        {
            int newest = edges.Newest;
            int before = (newest - Count) & EdgeRing.Mask;
            long sumC = edges.SumsC[newest] - edges.SumsC[before];
            long spread = (Count * (edges.SumsCC[newest] - edges.SumsCC[before])) - (sumC * sumC);
            long together = (Count * (edges.SumsTC[newest] - edges.SumsTC[before])) - ((edges.SumsT[newest] - edges.SumsT[before]) * sumC);
            return spread <= 0 || together <= 0 ? 0 : together < long.MaxValue / 1000 ? together * 1000 / spread : together / spread * 1000;
        }

        /// <summary>Mean square of the edges' distances from the fitted line, square microseconds; only where there is a period.</summary>
        public long SquareResidual(long periodNanoseconds)
        {
            int newest = edges.Newest;
            int before = (newest - Count) & EdgeRing.Mask;
            long sumC = edges.SumsC[newest] - edges.SumsC[before];
            long sumT = edges.SumsT[newest] - edges.SumsT[before];
            long spread = (Count * (edges.SumsCC[newest] - edges.SumsCC[before])) - (sumC * sumC);
            long together = (Count * (edges.SumsTC[newest] - edges.SumsTC[before])) - (sumT * sumC);
            long times = (Count * (edges.SumsTT[newest] - edges.SumsTT[before])) - (sumT * sumT);
            if (together >= long.MaxValue / (periodNanoseconds + 1))
            {
                return 0;
            }

            // What the division by the spread left over is small, and its share all the same more than the rest where pulses are fast.
            long left = (together * 1000) - (periodNanoseconds * spread);
            long square = times - (together * periodNanoseconds / 1000) - (left / 1000 * periodNanoseconds / 1000);
            return square <= 0 ? 0 : square / ((long)Count * Count);
        }

        /// <summary>The farthest that errors of half a bracket each can turn the line, nanoseconds of period: all early first, all late after.</summary>
        public long WorstErrorNanoseconds(long bracketMicroseconds)
        {
            long perCount = Periods * 2;
            return perCount <= 0 ? long.MaxValue : bracketMicroseconds * 3000 / perCount;
        }
    }
}
