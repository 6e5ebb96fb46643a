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
        private long sumTT;
        private int count;

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
        public int Count => count;

        /// <summary>From the oldest edge to the newest, microseconds.</summary>
        public long Microseconds => edges.Times[edges.Newest] - edges.Times[edges.Back(count - 1)];

        /// <summary>Periods from the oldest edge to the newest.</summary>
        public long Periods => edges.Counts[edges.Newest] - edges.Counts[edges.Back(count - 1)];

        public void Clear()
        {
            count = 0;
            sumT = sumC = sumCC = sumTC = sumTT = 0;
        }

        /// <summary>To be called after each edge that the ring has taken.</summary>
        public void TakeNewest()
        {
            int newest = edges.Newest;
            Take(newest);
            long[] times = edges.Times;
            long oldestToKeep = times[newest] - length;
            int oldest = (newest - count + 1) & EdgeRing.Mask;
            while (count == EdgeRing.Capacity || (count > fewest && times[oldest] < oldestToKeep))
            {
                Drop(oldest);
                oldest = (oldest + 1) & EdgeRing.Mask;
            }
        }

        /// <summary>To be called when the counts of its edges were changed.</summary>
        public void TakeAgain()
        {
            int all = count;
            Clear();
            for (int back = all - 1; back >= 0; back--)
            {
                Take(edges.Back(back));
            }
        }

        /// <summary>Nanoseconds from edge to edge, or 0 where it cannot be told.</summary>
        public long PeriodNanoseconds()
        {
            long spread = (count * sumCC) - (sumC * sumC);
            long together = (count * sumTC) - (sumT * sumC);
            return spread <= 0 || together <= 0 ? 0 : together < long.MaxValue / 1000 ? together * 1000 / spread : together / spread * 1000;
        }

        /// <summary>Mean square of the edges' distances from the fitted line, square microseconds; only where there is a period.</summary>
        public long SquareResidual(long periodNanoseconds)
        {
            long spread = (count * sumCC) - (sumC * sumC);
            long together = (count * sumTC) - (sumT * sumC);
            long times = (count * sumTT) - (sumT * sumT);
            if (together >= long.MaxValue / (periodNanoseconds + 1))
            {
                return 0;
            }

            // What the division by the spread left over is small, and its share all the same more than the rest where pulses are fast.
            long left = (together * 1000) - (periodNanoseconds * spread);
            long square = times - (together * periodNanoseconds / 1000) - (left / 1000 * periodNanoseconds / 1000);
            return square <= 0 ? 0 : square / ((long)count * count);
        }

        /// <summary>The farthest that errors of half a bracket each can turn the line, nanoseconds of period: all early first, all late after.</summary>
        public long WorstErrorNanoseconds(long bracketMicroseconds)
        {
            long perCount = Periods * 2;
            return perCount <= 0 ? long.MaxValue : bracketMicroseconds * 3000 / perCount;
        }

        private void Take(int index)
        {
            long time = edges.Times[index];
            long counted = edges.Counts[index];
            if (count == 0 || time - originTime > FarMicroseconds)
            {
                MoveOrigin(time, counted);
            }

            long t = time - originTime;
            long c = counted - originCount;
            sumT += t;
            sumC += c;
            sumCC += c * c;
            sumTC += t * c;
            sumTT += t * t;
            count++;
        }

        private void Drop(int index)
        {
            long t = edges.Times[index] - originTime;
            long c = edges.Counts[index] - originCount;
            sumT -= t;
            sumC -= c;
            sumCC -= c * c;
            sumTC -= t * c;
            sumTT -= t * t;
            count--;
        }

        private void MoveOrigin(long time, long counted)
        {
            long dt = time - originTime;
            long dc = counted - originCount;
            sumTC += (count * dt * dc) - (dt * sumC) - (dc * sumT);
            sumCC += (count * dc * dc) - (2 * dc * sumC);
            sumTT += (count * dt * dt) - (2 * dt * sumT);
            sumT -= count * dt;
            sumC -= count * dc;
            originTime = time;
            originCount = counted;
        }
    }
}
