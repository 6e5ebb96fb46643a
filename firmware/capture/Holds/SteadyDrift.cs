using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>
    /// Tells a drift along a straight line from an approach that ends: a short end of either looks settled. A drift goes on from end to end
    /// by more than about half a standard deviation of the samples a second; what is known of scatter and slope allows for no more exact word.
    /// </summary>
    public sealed class SteadyDrift
    {
        // A slope of one standard deviation a second is found 4.5 standard errors above these in five seconds.
        private const int WholePerMille = 650;
        private const int HalfPerMille = 460;
        private const int ShortBins = 30;
        private const int MostBins = 100;

        // A foot holds no speed to better than four tenths of a percent a second.
        private const int FootSharePerSecond = 250;

        private readonly BinSpan _span;
        private readonly Tolerances _tolerances;
        private readonly StraightLine _line;
        private readonly StraightLine _speed;

        public SteadyDrift(BinSpan span, Tolerances tolerances)
        {
            _span = span;
            _tolerances = tolerances;
            _line = new StraightLine(span);
            _speed = new StraightLine(span);
        }

        /// <summary>The stretch, or the last ten seconds of it, is one drift of some channel.</summary>
        public bool Is(int from, int end)
        {
            int first = IntegerMath.Max(from, end - MostBins);
            int half = end - first < ShortBins ? IntegerMath.Max(first, end - (ShortBins / 2)) : (first + end) / 2;
            bool hasSpeed = _speed.Fit(Channel.Speed, first, end);
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                if (Drifts(channel, first, half, end, hasSpeed))
                {
                    return true;
                }
            }

            return false;
        }

        private bool Drifts(int channel, int first, int half, int end, bool hasSpeed)
        {
            if (!_line.Fit(channel, first, end))
            {
                return false;
            }

            long level = _span.Mean(channel, first, end);
            long slope = _line.Slope;
            long scatter = _tolerances.SampleScatter(_line.Scatter);
            long least = _tolerances.Settled(channel, _tolerances.Level(channel, level));
            least = channel == Channel.Speed && level / FootSharePerSecond > least ? level / FootSharePerSecond : least;
            if (Size(slope) <= least || Size(slope) <= scatter * WholePerMille / 1000 || (channel != Channel.Speed && hasSpeed && FollowsSpeed(channel, slope, level)))
            {
                return false;
            }

            return _line.Fit(channel, half, end) && slope > 0 == _line.Slope > 0 && Size(_line.Slope) > scatter * HalfPerMille / 1000;
        }

        // A pump's pressure changes by less than twice the share by which its speed does.
        private bool FollowsSpeed(int channel, long slope, long level) =>
            slope > 0 == _speed.Slope > 0
            && Size(slope) * _span.Mean(Channel.Speed, 0, _span.Count) < Size(_speed.Slope) * 2 * _tolerances.Level(channel, level);

        private static long Size(long value) => value < 0 ? -value : value;
    }
}
