namespace LoggerBox.Capture.Speed
{
    /// <summary>
    /// Tells lost and doubled edges from a change of speed, where pulses come slower than half as often as polls: what the polls allow decides,
    /// and where they allow nothing, that between two edges of a slow pickup a crankshaft can't change its speed by half. When it seems to again
    /// and again, it was the reference that was wrong: an engine that catches leaves cranking speed within a turn, and would be taken for half its
    /// speed from then on.
    /// </summary>
    internal sealed class PulseIntervals
    {
        private const int FewestPollTenths = 19;

        // From so many polls in a period on, one interval is known well enough to be the measure of the next.
        private const int PollsOfLongInterval = 7;

        private const int ExtraBelowPercent = 45;
        private const int ExtraBelowPercentOfLong = 62;
        private const int LostAbovePercent = 160;
        private const int MostLost = 3;

        // Four in a row, every other one of nine, or every fourth of twenty: a line that is a quarter too steep finds so many.
        private const int FaultWeight = 12;
        private const int FaultsNotBelieved = 48;

        private readonly PeriodBounds bounds;
        private long lastInterval;
        private int faults;

        public PulseIntervals(PeriodBounds bounds)
        {
            this.bounds = bounds;
        }

        /// <summary>What was judged lately can't all be faults: the period that it was held against is wrong.</summary>
        public bool Disagree => faults >= FaultsNotBelieved;

        /// <summary>
        /// The last judgement takes back what was judged before: all that the counter saw fits one period, and polls that keep step with the
        /// pulses made it look like faults.
        /// </summary>
        public bool TakesBack { get; private set; }

        /// <summary>Pulses come so slowly that each lost or doubled one can be told.</summary>
        public static bool AreSlow(long periodNanoseconds, long pollMicroseconds) => periodNanoseconds > pollMicroseconds * FewestPollTenths * 100;

        public void Forget()
        {
            lastInterval = 0;
            faults = 0;
        }

        /// <summary>How many real periods passed since the last edge: 0 where this one is an extra one.</summary>
        /// <param name="fresh">Edges that the counter saw.</param>
        /// <param name="counted">All real ones before them.</param>
        /// <param name="seen">All that the counter saw, these among them.</param>
        /// <param name="begin">The poll before they were seen.</param>
        /// <param name="end">The poll that saw them.</param>
        /// <param name="interval">Since the last edge, microseconds.</param>
        /// <param name="period">Nanoseconds.</param>
        /// <param name="poll">The usual time between polls, microseconds.</param>
        public long Judge(long fresh, long counted, long seen, long begin, long end, long interval, long period, long poll)
        {
            long allowed = bounds.Agreeing < PeriodBounds.FewestAgreeing ? -1 : bounds.Allowed(begin, end, counted + fresh) - counted;
            long real = allowed >= 0 ? allowed : ByInterval(fresh, interval, period, period > poll * PollsOfLongInterval * 1000);
            // Two in one poll are no two periods, whatever they are.
            TakesBack = real != fresh && fresh == 1 && bounds.Agreeing > 0 && bounds.SeenAgrees(begin, end, seen);
            if (TakesBack)
            {
                return fresh;
            }

            if (real > MostLost)
            {
                real = fresh;
                faults = FaultsNotBelieved;
            }

            faults = real != fresh ? faults + FaultWeight : faults > 0 ? faults - 1 : 0;
            lastInterval = real > 0 ? interval / real : lastInterval;
            return real;
        }

        // No count that the polls allow: the speed changes, or an edge lies where none can be.
        private long ByInterval(long fresh, long interval, long period, bool isLong)
        {
            long percent = isLong && lastInterval > 0 ? interval * 100 / lastInterval : interval * 100000 / period;
            return percent < (isLong ? ExtraBelowPercentOfLong : ExtraBelowPercent) ? 0
                : !isLong ? fresh
                : percent < LostAbovePercent ? 1
                : (percent + 50) / 100;
        }
    }
}
