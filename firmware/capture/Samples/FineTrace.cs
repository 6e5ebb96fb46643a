using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>
    /// One channel in steps of 10 ms over the last ten seconds: fine enough to time a run-up or the filling of a clutch. Points are called by their
    /// number, which stays the same while new ones come.
    /// </summary>
    public sealed class FineTrace
    {
        public const int StepMicroseconds = 10000;
        public const int Capacity = 1024;
        private const long NoStep = long.MinValue / 2;

        private readonly long[] _times = new long[Capacity];
        private readonly int[] _values = new int[Capacity];
        private long _sum;
        private long _sumTime;
        private int _gathered;
        private int _gatheredEnd;
        private long _began = NoStep;
        private int _end;
        private int _cleared;

        /// <summary>Number after the newest point's; that one may still be gathered.</summary>
        public int End => _end;

        // The oldest that is still there.
        private int Begin => IntegerMath.Max(_cleared, _end - Capacity);

        public void Clear()
        {
            _cleared = _end;
            _began = NoStep;
        }

        public void Add(long microseconds, int value)
        {
            if (value == SampleSet.Missing)
            {
                return;
            }

            // Divisions only where samples come faster than the steps.
            if (microseconds - _began < StepMicroseconds && microseconds / StepMicroseconds == _began / StepMicroseconds)
            {
                Gather(microseconds, value);
                return;
            }

            _began = microseconds;
            int number = _end;
            int newest = number & (Capacity - 1);
            _times[newest] = microseconds;
            _values[newest] = value;
            _end = number + 1;
        }

        public long Time(int number) => _times[number & (Capacity - 1)];

        public int Value(int number) => _values[number & (Capacity - 1)];

        /// <summary>Number of the first point at or after the moment; <see cref="End"/> where there is none.</summary>
        public int NumberAt(long microseconds)
        {
            int low = Begin, high = _end;
            while (low < high)
            {
                int middle = low + ((high - low) / 2);
                if (_times[middle & (Capacity - 1)] < microseconds)
                {
                    low = middle + 1;
                }
                else
                {
                    high = middle;
                }
            }

            return low;
        }

        /// <summary>Sum of the points from..to (to not included).</summary>
        public long Sum(int from, int to)
        {
            long sum = 0;
            int[] values = _values;
            for (int i = from; i < to; i++)
            {
                sum += values[i & (Capacity - 1)];
            }

            return sum;
        }

        /// <summary>
        /// Highest sum of so many neighbours of those that begin at from..to (to not included). The sum of the first ones but their last is handed in, and
        /// that of what comes next out.
        /// </summary>
        public long HighestSum(int neighbours, int from, int to, ref long sum)
        {
            int[] values = _values;
            long running = sum;
            long highest = long.MinValue;
            for (int i = from; i < to; i++)
            {
                running += values[(i + neighbours - 1) & (Capacity - 1)];
                if (running > highest)
                {
                    highest = running;
                }

                running -= values[i & (Capacity - 1)];
            }

            sum = running;
            return highest;
        }

        /// <summary>Mean of the points from..to (to not included); 0 of none.</summary>
        public int Mean(int from, int to) => to <= from ? 0 : (int)IntegerMath.DivideRounded(Sum(from, to), to - from);

        /// <summary>The first from here on, before the end, that is at the level and whose follower is; -1 where there is none.</summary>
        public int FirstTwoAbove(int from, int end, int level)
        {
            int[] values = _values;
            for (int i = from; i < end - 1; i++)
            {
                if (values[i & (Capacity - 1)] >= level && values[(i + 1) & (Capacity - 1)] >= level)
                {
                    return i;
                }
            }

            return -1;
        }

        /// <summary>When the trace came up to the level at a point, between it and the one before: a coarse recording is not late by half a step.</summary>
        public long Crossing(int number, int level)
        {
            int here = Value(number);
            int before = Value(number - 1);
            if (number == Begin || before >= level || here <= level)
            {
                return Time(number);
            }

            long step = Time(number) - Time(number - 1);
            return Time(number - 1) + (step * (level - before) / (here - before));
        }

        // Samples that come faster than the steps: their mean is the point.
        private void Gather(long microseconds, int value)
        {
            int newest = (_end - 1) & (Capacity - 1);
            if (_gatheredEnd != _end)
            {
                _gatheredEnd = _end;
                _gathered = 1;
                _sum = _values[newest];
                _sumTime = _times[newest];
            }

            _gathered++;
            _sum += value;
            _sumTime += microseconds;
            _times[newest] = _sumTime / _gathered;
            _values[newest] = (int)IntegerMath.DivideRounded(_sum, _gathered);
        }
    }
}
