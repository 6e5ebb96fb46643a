namespace LoggerBox.Capture.Speed
{
    /// <summary>
    /// The newest edges of a pickup: when each was, and how many were counted by then. The least-squares period over them costs the same
    /// few steps however many there are: sums are kept, and moved along where they grow.
    /// </summary>
    internal sealed class EdgeWindow
    {
        // Sums of products stay below 2^63 up to twice as far from the origin with the fastest pickup.
        private const long FarMicroseconds = 8000000;

        private readonly EdgeRing edges;
        private readonly int fewest;
        private readonly long length;
        private long originTime;
        private long originCount;
        private long sumT;
        private long sumC;
        private long sumCC;
        private long sumTC;

        /// <param name="edges">Where they are kept.</param>
        /// <param name="fewest">So many are always looked at.</param>
        /// <param name="microseconds">All that are not older than this.</param>
        public EdgeWindow(EdgeRing edges, int fewest, long microseconds)
        {
            this.edges = edges;
            this.fewest = fewest;
            length = microseconds;
        }

        /// <summary>Edges in it.</summary>
        public int Count { get; private set; }

        public void Clear()
        {
            Count = 0;
            sumT = sumC = sumCC = sumTC = 0;
        }

        /// <summary>To be called after each edge that the ring has taken.</summary>
        public void TakeNewest()
        {
            long time = edges.Times[edges.Newest];
            long count = edges.Counts[edges.Newest];
            if (Count == 0 || time - originTime > FarMicroseconds)
            {
                MoveOrigin(time, count);
            }

            long t = time - originTime;
            long c = count - originCount;
            sumT += t;
            sumC += c;
            sumCC += c * c;
            sumTC += t * c;
            Count++;
            int oldest = edges.Back(Count - 1);
            while (Count == EdgeRing.Capacity || (Count > fewest && time - edges.Times[oldest] > length))
            {
                Drop(oldest);
                oldest = (oldest + 1) & EdgeRing.Mask;
            }
        }

        /// <summary>Nanoseconds from edge to edge, or 0 where it cannot be told.</summary>
        public long PeriodNanoseconds()
        {
            long spread = (Count * sumCC) - (sumC * sumC);
            long together = (Count * sumTC) - (sumT * sumC);
            return spread <= 0 || together <= 0 ? 0 : together < long.MaxValue / 1000 ? together * 1000 / spread : together / spread * 1000;
        }

        /// <summary>Where the fitted line has this count, microseconds; only where there is a period.</summary>
        public long TimeOf(long count, long periodNanoseconds)
        {
            long beyondMean = ((count - originCount) * Count) - sumC;
            return originTime + (sumT / Count) + (beyondMean * periodNanoseconds / (1000L * Count));
        }

        /// <summary>The farthest that errors of half a bracket each can turn the line, nanoseconds of period: all early first, all late after.</summary>
        public long WorstErrorNanoseconds(long bracketMicroseconds)
        {
            long perCount = (edges.Counts[edges.Newest] - edges.Counts[edges.Back(Count - 1)]) * 2;
            return perCount <= 0 ? long.MaxValue : bracketMicroseconds * 3000 / perCount;
        }

        private void Drop(int index)
        {
            long t = edges.Times[index] - originTime;
            long c = edges.Counts[index] - originCount;
            sumT -= t;
            sumC -= c;
            sumCC -= c * c;
            sumTC -= t * c;
            Count--;
        }

        private void MoveOrigin(long time, long count)
        {
            long dt = time - originTime;
            long dc = count - originCount;
            sumTC += (Count * dt * dc) - (dt * sumC) - (dc * sumT);
            sumCC += (Count * dc * dc) - (2 * dc * sumC);
            sumT -= Count * dt;
            sumC -= Count * dc;
            originTime = time;
            originCount = count;
        }
    }
}
