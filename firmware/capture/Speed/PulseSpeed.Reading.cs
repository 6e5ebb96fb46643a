using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Speed
{
    /// <summary>What is read off the edges: the speed, sooner and less exactly once more, and how far it may be off.</summary>
    public sealed partial class PulseSpeed
    {
        private bool hasEdge;

        // It holds the speed as it was last read.
        private SampleSet? read;
        private long quietUntil = long.MinValue;
        private int readTenths;
        private int readQuick;
        private int readUncertainty;
        private int readBias;

        /// <summary>Tenths of rpm; 0 once no edge came for the period of the slowest speed; missing until that can be known.</summary>
        public int ReadTenths(long now)
        {
            if (longer.Count == 0)
            {
                return polled && now - firstPoll > stoppedMicroseconds ? 0 : SampleSet.Missing;
            }

            // Up to the last poll, not to now: what came since then has not been looked at.
            if (lastPoll - lastEdge > stoppedMicroseconds)
            {
                Forget();
                firstPoll = now - stoppedMicroseconds - 1;
                return 0;
            }

            return Shown(period);
        }

        /// <summary>The same from the last few edges alone, for what must know at once and not exactly. To be called after <see cref="ReadTenths"/>.</summary>
        public int QuickTenths => longer.Count == 0 ? SampleSet.Missing : Shown(quickPeriod);

        /// <summary>Reads the speed and all that is known of it. Between two edges nothing new is, until the next one is overdue.</summary>
        public void Read(SampleSet sample, long now)
        {
            if (lastPoll <= quietUntil && sample == read && !hasEdge)
            {
                sample.IsSpeedNew = false;
                return;
            }

            read = sample;
            if (lastPoll > quietUntil)
            {
                readTenths = ReadTenths(now);
                readQuick = readTenths > 0 ? QuickTenths : readTenths;
                ReadUncertainty();
                TakeQuiet();
            }

            sample.IsSpeedNew = hasEdge;
            hasEdge = false;
            sample.Values[Channel.Speed] = readTenths;
            sample.QuickSpeed = readQuick;
            sample.SpeedUncertaintyHundredths = readUncertainty;
            sample.SpeedBiasHundredths = readBias;
        }

        // Two edges may be lost in a row: silence says something once it is longer than that by a third, as Shown has it.
        private void TakeQuiet()
        {
            long least = quickPeriod < period ? quickPeriod : period;
            quietUntil = period <= 0 ? long.MinValue : lastEdge + (least / 300);
        }

        private void ReadUncertainty()
        {
            readUncertainty = 0;
            readBias = 0;
            if (readTenths <= 0 || longer.Count == 0)
            {
                return;
            }

            long periods = longer.Periods;
            long faults = agrees ? doubt.OfFaults() : doubt.OfLine(period, lastWidth);
            readUncertainty = (agrees ? Hundredths(readTenths, HalfOfBounds, 1) : 0) + (faults > 0 ? Hundredths(readTenths, faults, periods) : 0);
            long lasting = doubt.Lasting;
            readBias = lasting > 0 ? Hundredths(readTenths, lasting, periods) : 0;
        }

        // Parts of a period: the truth lies between the bounds.
        private long HalfOfBounds => (bounds.Longest - bounds.Shortest) * SpeedDoubt.Parts / (2 * period);

        private static int Hundredths(int tenths, long parts, long periods) =>
            IntegerMath.Clamp(tenths * 100L * parts / (SpeedDoubt.Parts * (periods < 1 ? 1 : periods)), 0, int.MaxValue);

        private int Shown(long shown)
        {
            if (shown <= 0)
            {
                return SampleSet.Missing;
            }

            // Two edges may be lost in a row. No edge for longer than that: the engine slows down, and it can't be faster than one edge in that time.
            long silence = lastPoll - lastEdge;
            return IntegerMath.Clamp(TenthsOf(silence * 3000 > shown * 10 ? silence * 1000 : shown), 0, 2 * SampleBlock.SpeedMiddleTenths);
        }

        private long TenthsOf(long nanoseconds) => ((600000000000L * revolutions) + (nanoseconds * pulses / 2)) / (nanoseconds * pulses);
    }
}
