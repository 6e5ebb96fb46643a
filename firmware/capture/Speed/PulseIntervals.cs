namespace LoggerBox.Capture.Speed
{
    /// <summary>
    /// Tells lost and doubled edges from a change of speed, where pulses come slower than half as often as polls. Between two edges of a
    /// slow pickup a crankshaft can't change its speed by half; when it seems to again and again, it was the reference that was wrong:
    /// an engine that catches leaves cranking speed within a turn, and would be taken for half its speed from then on.
    /// </summary>
    internal sealed class PulseIntervals
    {
        private const int FewestPollTenths = 19;

        // From so many polls in a period on, one interval is known well enough to be the measure of the next; below, the line through
        // the last edges is, as long as the speed stands.
        private const int PollsOfLongInterval = 7;

        private const int ExtraBelowPercent = 45;
        private const int ExtraBelowPercentOfLong = 62;
        private const int LostAbovePercent = 160;
        private const int MostLost = 3;

        // Four in a row, every other one of nine, or every fourth of twenty: a line that is a quarter too steep finds so many.
        private const int FaultWeight = 12;
        private const int FaultsNotBelieved = 48;

        private long lastInterval;
        private int faults;

        /// <summary>What was judged lately can't all be faults: the period that it was held against is wrong.</summary>
        public bool Disagree => faults >= FaultsNotBelieved;

        public void Forget()
        {
            lastInterval = 0;
            faults = 0;
        }

        /// <summary>How many real periods passed since the last edge: 0 where this one is an extra one.</summary>
        /// <param name="fresh">Edges that the counter saw.</param>
        /// <param name="interval">Since the last edge, microseconds.</param>
        /// <param name="sinceLine">Since the last edge by the line through the latest ones; 0 where the speed changes.</param>
        /// <param name="period">Nanoseconds; 0 where it is not known.</param>
        /// <param name="poll">The usual time between polls, microseconds.</param>
        public long Judge(long fresh, long interval, long sinceLine, long period, long poll)
        {
            if (period <= poll * FewestPollTenths * 100)
            {
                Forget();
                return fresh;
            }

            bool isLong = period > poll * PollsOfLongInterval * 1000;
            long percent = isLong ? interval * 100 / (lastInterval > 0 ? lastInterval : period / 1000)
                : sinceLine > 0 ? sinceLine * 100000 / period
                : fresh * 100;
            long real = percent < (isLong ? ExtraBelowPercentOfLong : ExtraBelowPercent) ? 0 : percent < LostAbovePercent ? 1 : (percent + 50) / 100;
            if (real > MostLost)
            {
                real = fresh;
                faults = FaultsNotBelieved;
            }

            faults = real != fresh ? faults + FaultWeight : faults > 0 ? faults - 1 : 0;
            lastInterval = real > 0 ? interval / real : lastInterval;
            return real;
        }
    }
}
