using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Speed
{
    /// <summary>
    /// Engine speed from a free-running pulse counter. Each poll that finds a new count brackets an edge between itself and the poll before;
    /// speed is the least-squares slope of count over bracket midpoints, so that a late poll widens one bracket and shifts nothing.
    /// </summary>
    public sealed class PulseSpeed
    {
        // Long enough that a plug lead of a four-stroke (6 edges a second at idle) gives three brackets, short enough to follow a run-up.
        private const int WindowMicroseconds = 200000;
        private const int FewestBrackets = 4;
        private const int Capacity = 64;

        // 50 rpm on a four-stroke plug lead, the slowest pickup: below it the engine is stopped.
        private const int SlowestTenths = 500;
        private const int FastestTenths = 90000;

        private readonly int _pulses;
        private readonly int _revolutions;
        private readonly long _stoppedMicroseconds;
        private readonly long _shortestPeriodNanoseconds;
        private readonly long[] _times = new long[Capacity];
        private readonly long[] _counts = new long[Capacity];
        private readonly PulseIntervals _intervals = new PulseIntervals();
        private int _stored;
        private int _next;
        private bool _polled;
        private long _firstPoll;
        private long _lastPoll;
        private long _lastCount;

        /// <param name="pulses">Pulses in <paramref name="revolutions"/> revolutions, both at least 1.</param>
        /// <param name="revolutions">2 for one plug lead of a four-stroke, else 1.</param>
        public PulseSpeed(int pulses, int revolutions)
        {
            _pulses = pulses < 1 ? 1 : pulses;
            _revolutions = revolutions < 1 ? 1 : revolutions;
            _stoppedMicroseconds = PeriodNanoseconds(SlowestTenths) / 1000;
            _shortestPeriodNanoseconds = PeriodNanoseconds(FastestTenths);
        }

        /// <summary>One reading of the counter; count and time were taken together.</summary>
        public void Poll(long count, long microseconds)
        {
            if (!_polled)
            {
                _polled = true;
                _firstPoll = microseconds;
            }
            else
            {
                long fresh = count - _lastCount;
                long passed = microseconds - _lastPoll;
                if (passed > 0 && Possible(fresh, passed))
                {
                    AddBracket(fresh, microseconds - (passed / (2 * fresh)), passed);
                }
            }

            _lastCount = count;
            _lastPoll = microseconds;
        }

        /// <summary>Tenths of rpm; 0 once no edge came for the period of the slowest speed; missing until that can be known.</summary>
        public int ReadTenths(long now)
        {
            if (_stored == 0)
            {
                return _polled && now - _firstPoll > _stoppedMicroseconds ? 0 : SampleSet.Missing;
            }

            // Up to the last poll, not to now: what came since then has not been looked at.
            long silence = _lastPoll - _times[Index(1)];
            if (silence > _stoppedMicroseconds)
            {
                _stored = 0;
                _intervals.Forget();
                _firstPoll = now - _stoppedMicroseconds - 1;
                return 0;
            }

            long period = FittedPeriodNanoseconds();
            if (period <= 0)
            {
                return SampleSet.Missing;
            }

            // No edge for longer than a period: the engine slows down, and it can't be faster than one edge in that time.
            if (silence * 1000 > period * 3 / 2)
            {
                period = silence * 1000;
            }

            return IntegerMath.Clamp(TenthsOfPeriod(period), 0, 2 * SampleBlock.SpeedMiddleTenths);
        }

        // A lone edge fits any bracket, a poll being far shorter than a period; several in one are bounded by the fastest engine.
        private bool Possible(long fresh, long passed) =>
            fresh == 1 || (fresh > 1 && passed * 1000 / (fresh - 1) >= _shortestPeriodNanoseconds / 4);

        private void AddBracket(long fresh, long middle, long passed)
        {
            long counted = _stored == 0 ? fresh : _counts[Index(1)] + fresh;
            long interval = _stored == 0 ? 0 : middle - _times[Index(1)];
            if (fresh > 1 || !_intervals.CanJudge(interval, passed))
            {
                _intervals.Forget();
            }
            else if (_stored > 0)
            {
                int real = _intervals.Judge(interval);
                if (real == 0)
                {
                    return;
                }

                counted += real - 1;
            }

            _times[_next] = middle;
            _counts[_next] = counted;
            _next = (_next + 1) % Capacity;
            _stored = IntegerMath.Min(_stored + 1, Capacity);
        }

        private long FittedPeriodNanoseconds()
        {
            long last = _times[Index(1)];
            long lastCount = _counts[Index(1)];
            long n = 0, sumT = 0, sumC = 0, sumTT = 0, sumTC = 0;
            for (int back = 1; back <= _stored; back++)
            {
                long t = _times[Index(back)] - last;
                if (back > FewestBrackets && -t > WindowMicroseconds)
                {
                    break;
                }

                long c = _counts[Index(back)] - lastCount;
                n++;
                sumT += t;
                sumC += c;
                sumTT += t * t;
                sumTC += t * c;
            }

            long slope = (n * sumTC) - (sumT * sumC);
            long spread = (n * sumTT) - (sumT * sumT);
            return slope <= 0 || spread <= 0 ? 0 : ScaledRatio(spread, slope);
        }

        // spread * 1000 / slope without leaving 64 bits when the engine is slow and the window long.
        private static long ScaledRatio(long spread, long slope) =>
            spread < long.MaxValue / 1000 ? spread * 1000 / slope : spread / slope * 1000;

        private long PeriodNanoseconds(int tenths) => 600000000000L / tenths * _revolutions / _pulses;

        private long TenthsOfPeriod(long nanoseconds) => ((600000000000L * _revolutions) + (nanoseconds * _pulses / 2)) / (nanoseconds * _pulses);

        private int Index(int back) => (_next - back + Capacity) % Capacity;
    }
}
