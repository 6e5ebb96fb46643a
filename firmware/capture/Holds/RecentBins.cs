using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>The last seconds of bins with their extremes: how the readings came to where they stand now.</summary>
    public sealed class RecentBins
    {
        private const int Capacity = 128;

        private readonly long[] _starts = new long[Capacity];
        private readonly int[] _means = new int[Capacity * Channel.Count];
        private readonly int[] _highest = new int[Capacity * Channel.Count];
        private readonly int[] _lowest = new int[Capacity * Channel.Count];
        private int _next;
        private int _count;

        public int Count => _count;

        public void Clear() => _count = 0;

        public void Add(Bin bin)
        {
            _starts[_next] = bin.StartMicroseconds;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                int at = (_next * Channel.Count) + channel;
                _means[at] = bin.Means[channel];
                _highest[at] = bin.Highest[channel];
                _lowest[at] = bin.Lowest[channel];
            }

            _next = (_next + 1) % Capacity;
            _count = IntegerMath.Min(_count + 1, Capacity);
        }

        /// <summary>Bins by age: 0 is the newest.</summary>
        public long Start(int age) => _starts[At(age)];

        public int Mean(int age, int channel) => _means[(At(age) * Channel.Count) + channel];

        public int Highest(int age, int channel) => _highest[(At(age) * Channel.Count) + channel];

        public int Lowest(int age, int channel) => _lowest[(At(age) * Channel.Count) + channel];

        private int At(int age) => (_next - 1 - age + (2 * Capacity)) % Capacity;
    }
}
