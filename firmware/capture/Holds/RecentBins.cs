using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>The last seconds of bins with their extremes, by number: how the readings came to where they stand now.</summary>
    public sealed class RecentBins
    {
        /// <summary>Nothing looks farther back from the newest bin.</summary>
        public const int Reach = 128;

        // What is looked at may be some bins old by then.
        private const int Capacity = 192;

        private readonly long[] _starts = new long[Capacity];
        private readonly int[] _means = new int[Capacity * Channel.Count];
        private readonly int[] _highest = new int[Capacity * Channel.Count];
        private readonly int[] _lowest = new int[Capacity * Channel.Count];
        private int _oldest;

        /// <summary>Number of the newest bin; they count from 0.</summary>
        public int Newest = -1;

        /// <summary>Number of the oldest that is to be looked at.</summary>
        public int Oldest => IntegerMath.Max(_oldest, Newest + 1 - Reach);

        /// <summary>What came so far is not to be looked at any more.</summary>
        public void Clear() => _oldest = Newest + 1;

        public void Add(Bin bin)
        {
            Newest++;
            int place = Newest % Capacity;
            _starts[place] = bin.StartMicroseconds;
            System.Array.Copy(bin.Means, 0, _means, place * Channel.Count, Channel.Count);
            System.Array.Copy(bin.Highest, 0, _highest, place * Channel.Count, Channel.Count);
            System.Array.Copy(bin.Lowest, 0, _lowest, place * Channel.Count, Channel.Count);
        }

        public long Start(int number) => _starts[number % Capacity];

        public int Mean(int number, int channel) => _means[((number % Capacity) * Channel.Count) + channel];

        /// <summary>Widens extremes, channel by channel, by those of a bin. A channel without a reading stays.</summary>
        public void Widen(int number, int[] highest, int[] lowest)
        {
            int place = (number % Capacity) * Channel.Count;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                if (_means[place] != Bin.NoMean)
                {
                    int high = _highest[place];
                    if (high > highest[channel])
                    {
                        highest[channel] = high;
                    }

                    int low = _lowest[place];
                    if (low < lowest[channel])
                    {
                        lowest[channel] = low;
                    }
                }

                place++;
            }
        }
    }
}
