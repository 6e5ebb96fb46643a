using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>
    /// Tells a drift along a straight line from an approach that ends: a short end of either looks settled. A drift goes on from end to end
    /// by more than about half a standard deviation of the samples a second; what is known of scatter and slope allows for no more exact word.
    /// </summary>
    public sealed class SteadyDrift
    {
        // Thousandths of the samples' standard deviation a second, over the whole stretch and over its later half: over five seconds a slope of
        // one standard deviation is known to 0.05 and to 0.13.
        private const int WholePerMille = 650;
        private const int HalfPerMille = 460;
        private const int ShortBins = 30;
        private const int MostBins = 100;

        // A foot holds no speed to better than four tenths of a percent a second. A clutch that slips under load lets it creep twice as fast,
        // while the pressures stand: with pressures as witnesses that much is a hold.
        private const int FootSharePerSecond = 250;
        private const int LoadedSharePerSecond = 125;

        private readonly BinSpan _span;
        private readonly Tolerances _tolerances;
        private readonly StraightLine _line;

        public SteadyDrift(BinSpan span, Tolerances tolerances)
        {
            _span = span;
            _tolerances = tolerances;
            _line = new StraightLine(span);
        }

        /// <summary>
        /// The stretch, or the last ten seconds of it, is one drift of the speed; of a pressure where no speed is known. A pressure that
        /// creeps while the engine stands at its speed is the truck's answer, and may be the fault that is looked for.
        /// </summary>
        public bool Is(int from, int end)
        {
            int first = IntegerMath.Max(from, end - MostBins);
            int half = end - first < ShortBins ? IntegerMath.Max(first, end - (ShortBins / 2)) : (first + end) / 2;
            if (_line.Fit(Channel.Speed, first, end))
            {
                int share = HasPressure(first, end) ? LoadedSharePerSecond : FootSharePerSecond;
                return Drifts(Channel.Speed, first, half, end, _span.Mean(Channel.Speed, first, end) / share);
            }

            for (int channel = Channel.Main; channel < Channel.Count; channel++)
            {
                if (Drifts(channel, first, half, end, 0))
                {
                    return true;
                }
            }

            return false;
        }

        private bool Drifts(int channel, int first, int half, int end, long allowed)
        {
            if (!_line.Fit(channel, first, end))
            {
                return false;
            }

            long level = _span.Mean(channel, first, end);
            long slope = _line.Slope;
            long scatter = _tolerances.SampleScatter(_line.Scatter);
            long least = _tolerances.Settled(channel, _tolerances.Level(channel, level));
            least = allowed > least ? allowed : least;
            return Size(slope) > least
                && Size(slope) > scatter * WholePerMille / 1000
                && _line.Fit(channel, half, end)
                && slope > 0 == _line.Slope > 0
                && Size(_line.Slope) > scatter * HalfPerMille / 1000;
        }

        private bool HasPressure(int begin, int end)
        {
            for (int channel = Channel.Main; channel < Channel.Count; channel++)
            {
                if (_span.Readings(channel, begin, end) * 2 >= end - begin)
                {
                    return true;
                }
            }

            return false;
        }

        private static long Size(long value) => value < 0 ? -value : value;
    }
}
