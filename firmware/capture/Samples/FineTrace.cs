using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>One channel in steps of 10 ms over the last ten seconds: fine enough to time a run-up or the filling of a clutch.</summary>
    public sealed class FineTrace
    {
        public const int StepMicroseconds = 10000;
        public const int Capacity = 1024;

        private readonly long[] _times = new long[Capacity];
        private readonly int[] _values = new int[Capacity];
        private long _sum;
        private long _sumTime;
        private int _gathered;
        private long _step = -1;
        private int _next;

        /// <summary>Points kept.</summary>
        public int Count { get; private set; }

        public void Clear()
        {
            Count = 0;
            _gathered = 0;
            _sum = 0;
            _sumTime = 0;
            _step = -1;
        }

        public void Add(long microseconds, int value)
        {
            if (value == SampleSet.Missing)
            {
                return;
            }

            long step = microseconds / StepMicroseconds;
            if (step != _step)
            {
                Keep();
                _step = step;
            }

            _sum += value;
            _sumTime += microseconds - (step * StepMicroseconds);
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

            _times[_next] = (_step * StepMicroseconds) + (_sumTime / _gathered);
            _values[_next] = (int)IntegerMath.DivideRounded(_sum, _gathered);
            _next = (_next + 1) % Capacity;
            Count = IntegerMath.Min(Count + 1, Capacity);
            _sum = 0;
            _sumTime = 0;
            _gathered = 0;
        }

        private int At(int index) => (_next - Count + index + Capacity) % Capacity;
    }
}
