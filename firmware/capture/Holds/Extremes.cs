using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>Highest and lowest of each channel from the approach of a hold to its end, gathered behind the readings.</summary>
    public sealed class Extremes
    {
        private const int BinsAtATime = 8;

        private readonly RecentBins _bins;
        private readonly int[] _highest = new int[Channel.Count];
        private readonly int[] _lowest = new int[Channel.Count];
        private int _next;

        public Extremes(RecentBins bins)
        {
            _bins = bins;
        }

        public int Highest(int channel) => _highest[channel];

        public int Lowest(int channel) => _lowest[channel];

        /// <summary>From this bin on.</summary>
        public void Begin(int number)
        {
            _next = number;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                _highest[channel] = int.MinValue;
                _lowest[channel] = int.MaxValue;
            }
        }

        /// <summary>Takes some bins before this one; true when there was nothing to take.</summary>
        public bool GatherUntil(int number)
        {
            if (_next >= number)
            {
                return true;
            }

            int until = IntegerMath.Min(_next + BinsAtATime, number);
            for (; _next < until; _next++)
            {
                _bins.Widen(_next, _highest, _lowest);
            }

            return false;
        }
    }
}
