using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Speed
{
    /// <summary>
    /// Engine speed from a free-running pulse counter. Each poll that finds a new count brackets an edge between itself and the poll before,
    /// or the last period where that is shorter. Speed is the middle of what the polls allow, or the least-squares slope of bracket middles over count,
    /// so that a late poll widens one bracket and shifts nothing. Half a second of edges while the speed stands, a fifth while it changes.
    /// </summary>
    public sealed partial class PulseSpeed
    {
        private const int FewestEdges = 4;
        private const int LongMicroseconds = 500000;
        private const int ShortMicroseconds = 200000;

        // Of fast pulses no more edges are kept than the ring holds in half a second.
        private const int SpacingMicroseconds = 7850;

        // A bracket so much wider than the one before tells less than it costs; its edges count all the same.
        private const int WidthsTolerated = 3;

        // A poll's usual distance runs over about 16 of them.
        private const int PollShift = 4;

        // Of edges that come faster a line through them says as much as their bounds do, and costs less.
        private const int FewestPollTenths = 8;

        // 50 rpm on a four-stroke plug lead, the slowest pickup: below it the engine is stopped.
        private const int SlowestTenths = 500;
        private const int FastestTenths = 90000;

        private readonly int pulses;
        private readonly int revolutions;
        private readonly long stoppedMicroseconds;
        private readonly long shortestPeriodNanoseconds;
        private readonly EdgeRing edges = new EdgeRing();
        private readonly EdgeWindow longer;
        private readonly EdgeWindow shorter;
        private readonly PeriodBounds bounds;
        private readonly PulseIntervals intervals;
        private readonly SpeedDoubt doubt;
        private bool polled;
        private long firstPoll;
        private long lastPoll;
        private long lastCount;
        private long lastEdge;
        private long lastWidth;
        private long counted;
        private long seen;
        private long usualPoll;
        private long period;
        private long quickPeriod;
        private bool agrees;

        /// <param name="pulses">Pulses in <paramref name="revolutions"/> revolutions, both at least 1.</param>
        /// <param name="revolutions">2 for one plug lead of a four-stroke, else 1.</param>
        public PulseSpeed(int pulses, int revolutions)
        {
            this.pulses = pulses < 1 ? 1 : pulses;
            this.revolutions = revolutions < 1 ? 1 : revolutions;
            stoppedMicroseconds = PeriodOf(SlowestTenths) / 1000;
            shortestPeriodNanoseconds = PeriodOf(FastestTenths);
            longer = new EdgeWindow(edges, FewestEdges, LongMicroseconds);
            shorter = new EdgeWindow(edges, FewestEdges, ShortMicroseconds);
            bounds = new PeriodBounds(edges, longer);
            intervals = new PulseIntervals(bounds);
            doubt = new SpeedDoubt(longer);
        }

        /// <summary>One reading of the counter; count and time were taken together.</summary>
        public void Poll(long count, long microseconds)
        {
            long passed = microseconds - lastPoll;
            long fresh = count - lastCount;
            if (!polled)
            {
                polled = true;
                firstPoll = microseconds;
            }
            else
            {
                if (passed != usualPoll)
                {
                    usualPoll = usualPoll == 0 ? passed : usualPoll + ((passed - usualPoll) >> PollShift);
                }

                if (fresh != 0 && passed > 0 && Possible(fresh, passed))
                {
                    TakeEdge(fresh, microseconds, passed);
                }
            }

            lastCount = count;
            lastPoll = microseconds;
        }

        // A lone edge fits any bracket, a poll being far shorter than a period; several in one are bounded by the fastest engine.
        private bool Possible(long fresh, long passed) =>
            fresh == 1 || (fresh > 1 && passed * 1000 / (fresh - 1) >= shortestPeriodNanoseconds / 4);

        private void TakeEdge(long fresh, long now, long passed)
        {
            // After the last edge none came: it lies no farther back than one period.
            long known = period / 1000;
            long width = known == 0 ? passed / fresh : known < passed ? known : passed;
            long middle = now - (width / 2);
            seen += fresh;
            hasEdge = true;
            if (longer.Count >= FewestEdges && PulseIntervals.AreSlow(period, usualPoll))
            {
                long real = intervals.Judge(fresh, counted, seen, lastPoll, now, middle - lastEdge, period, usualPoll);
                if (intervals.TakesBack)
                {
                    TakeBack(fresh);
                }

                if (intervals.Disagree)
                {
                    BeginAgain(fresh);
                    real = fresh;
                }

                if (real == 0)
                {
                    return;
                }

                fresh = real;
            }

            counted += fresh;
            lastEdge = middle;
            if (longer.Count == 0 || (middle - edges.Times[edges.Newest] >= SpacingMicroseconds && width <= WidthsTolerated * lastWidth))
            {
                edges.Add(middle, counted, seen, lastPoll, now);
                longer.TakeNewest();
                shorter.TakeNewest();
                Fit(width);
                quietUntil = long.MinValue;
            }
            else if (quietUntil != long.MinValue)
            {
                TakeQuiet();
            }

            lastWidth = width;
        }

        private void TakeBack(long fresh)
        {
            edges.CountAsSeen();
            counted = seen - fresh;
        }

        // The last edge and this one are the only ones that are still believed.
        private void BeginAgain(long fresh)
        {
            Forget();
            counted -= fresh;
            edges.KeepNewest(counted);
            longer.TakeNewest();
            shorter.TakeNewest();
        }

        private void Fit(long width)
        {
            quickPeriod = shorter.PeriodNanoseconds();
            agrees = false;
            if (quickPeriod == 0 || quickPeriod > usualPoll * FewestPollTenths * 100)
            {
                bounds.TakeNewest();
                agrees = bounds.Agreeing >= PeriodBounds.FewestAgreeing;
            }
            else
            {
                bounds.PassNewest();
            }

            if (agrees)
            {
                period = (bounds.Shortest + bounds.Longest) / 2;
                TakeDoubt(width);
                return;
            }

            FitLine(width);
        }

        // Of slow pulses each lost or doubled one was told; of others it can hide between agreeing bounds.
        private void TakeDoubt(long width)
        {
            if (PulseIntervals.AreSlow(period, usualPoll))
            {
                doubt.TakeAgreeing();
            }
            else
            {
                doubt.TakeScatter(longer.PeriodNanoseconds(), width);
            }
        }

        // Both windows see the same edges: where they differ by more than brackets can make them, the speed changes.
        private void FitLine(long width)
        {
            period = longer.PeriodNanoseconds();
            doubt.TakeScatter(period, width);
            long apart = IntegerMath.Abs(quickPeriod - period);
            long bracket = width * 3 / 2;
            if (shorter.Count < longer.Count && apart > shorter.WorstErrorNanoseconds(bracket) + longer.WorstErrorNanoseconds(bracket))
            {
                period = quickPeriod;
            }
        }

        private void Forget()
        {
            longer.Clear();
            shorter.Clear();
            edges.Clear();
            bounds.Clear();
            intervals.Forget();
            doubt.Clear();
            counted = seen;
            period = 0;
            quickPeriod = 0;
        }

        private long PeriodOf(int tenths) => 600000000000L / tenths * revolutions / pulses;
    }
}
