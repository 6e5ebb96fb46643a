using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>One channel in steps of 10 ms over the last ten seconds: fine enough to time a run-up or the filling of a clutch.</summary>
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
        private long _stepStart = NoStep;
        private int _next;
        private int _count;

        /// <summary>Points kept.</summary>
        public int Count => _count;

        public void Clear()
        {
            _count = 0;
            _gathered = 0;
            _stepStart = NoStep;
        }

        public void Add(long microseconds, int value)
        {
            if (value == SampleSet.Missing)
            {
                return;
            }

            long within = microseconds - _stepStart;
            if (within < 0 || within >= StepMicroseconds)
            {
                Keep();
                _stepStart = microseconds - (microseconds % StepMicroseconds);
                _sum = value;
                _sumTime = microseconds - _stepStart;
                _gathered = 1;
                return;
            }

            _sum += value;
            _sumTime += within;
            _gathered++;
        }

        /// <summary>Points in order of time; 0 is the oldest.</summary>
        public long Time(int index) => _times[At(index)];

        public int Value(int index) => _values[At(index)];

        /// <summary>Index of the first point at or after the moment; <see cref="Count"/> where there is none.</summary>
        public int IndexAt(long microseconds)
        {
            int low = 0, high = Count;
            while (low < high)
            {
                int middle = (low + high) / 2;
                if (Time(middle) < microseconds)
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

        /// <summary>Mean of the points from..to (to not included); 0 of none.</summary>
        public int Mean(int from, int to)
        {
            long sum = 0;
            for (int i = from; i < to; i++)
            {
                sum += Value(i);
            }

            return to <= from ? 0 : (int)IntegerMath.DivideRounded(sum, to - from);
        }

        private void Keep()
        {
            if (_gathered == 0)
            {
                return;
            }

            _times[_next] = _stepStart + (_gathered == 1 ? _sumTime : _sumTime / _gathered);
            _values[_next] = (int)(_gathered == 1 ? _sum : IntegerMath.DivideRounded(_sum, _gathered));
            _next = (_next + 1) & (Capacity - 1);
            if (_count < Capacity)
            {
                _count++;
            }
        }

        private int At(int index) => (_next - _count + index) & (Capacity - 1);
    }
}
