using LoggerBox.Capture.Board;

namespace LoggerBox.BoardParts.Pulses
{
    /// <summary>
    /// A hardware counter of 16 bits that an interrupt extends: a reading that races the interrupt is off by 32767, once in as many
    /// pulses. What can't be is read again; what still can't be is as if it had not been polled, which costs nothing but a wider bracket.
    /// </summary>
    public sealed class SteadyPulseCounter : IPulseCounter
    {
        // 150 pulses a revolution at 9000 rpm, the fastest pickup there is.
        public const long FastestPulsesPerSecond = 22500;

        // After this long the fastest pickup may have made a whole 32767: a second reading tells.
        private const long LongMicroseconds = 500000;
        private const int Tries = 3;

        // Half a second of polls that all say the same: the counter began anew, it is not a race.
        private const int PollsUntilBelieved = 50;

        private readonly IPulseCounter _counter;
        private bool _any;
        private long _raw;
        private long _microseconds;
        private long _offset;
        private int _refused;

        public SteadyPulseCounter(IPulseCounter counter)
        {
            _counter = counter;
        }

        /// <summary>Readings that were left out because no pickup can count so.</summary>
        public int Rejected { get; private set; }

        public void Read(out long count, out long microseconds)
        {
            for (int i = 0; i < Tries; i++)
            {
                _counter.Read(out long raw, out long time);
                if (!_any || (Possible(raw - _raw, time - _microseconds) && IsSteady(raw, time)))
                {
                    Take(raw, time);
                    break;
                }

                Rejected++;
                if (i == Tries - 1 && ++_refused >= PollsUntilBelieved)
                {
                    _offset += _raw - raw;
                    Take(raw, time);
                }
            }

            count = _raw + _offset;
            microseconds = _microseconds;
        }

        private void Take(long raw, long time)
        {
            _any = true;
            _raw = raw;
            _microseconds = time;
            _refused = 0;
        }

        private bool IsSteady(long raw, long time)
        {
            if (time - _microseconds < LongMicroseconds)
            {
                return true;
            }

            _counter.Read(out long again, out long later);
            return Possible(again - raw, later - time);
        }

        // Half again as much as the fastest, and one edge that waited just outside.
        private static bool Possible(long fresh, long passed) =>
            fresh >= 0 && passed >= 0 && fresh <= (passed * FastestPulsesPerSecond * 3 / 2000000) + 1;
    }
}
