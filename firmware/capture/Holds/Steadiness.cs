using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>The two questions put to the newest bins: does everything stand still, and has something left its place.</summary>
    public sealed class Steadiness
    {
        public const int WindowBins = 15;
        private const int EndBins = 5;
        private const int NewestBins = 3;
        private const int FewestReadings = 6;

        private readonly BinSpan _span;
        private readonly Tolerances _tolerances;

        public Steadiness(BinSpan span, Tolerances tolerances)
        {
            _span = span;
            _tolerances = tolerances;
        }

        /// <summary>Every channel that has readings stands still over the last window; false where none has.</summary>
        public bool Stands() => Stands(WindowBins);

        /// <summary>The same over the last so many bins.</summary>
        public bool Stands(int bins)
        {
            if (_span.Count < bins)
            {
                return false;
            }

            int end = _span.Count;
            int begin = end - bins;
            bool any = false;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                if (_span.Readings(channel, begin, end) < FewestReadings)
                {
                    continue;
                }

                any = true;
                if (Moves(channel, begin, end))
                {
                    return false;
                }
            }

            return any;
        }

        /// <summary>A channel's newest bins lie elsewhere than the window before them.</summary>
        public bool Left()
        {
            int end = _span.Count;
            int middle = end - NewestBins;
            int begin = IntegerMath.Max(0, middle - WindowBins);
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                if (_span.Readings(channel, middle, end) == 0 || _span.Readings(channel, begin, middle) < FewestReadings)
                {
                    continue;
                }

                long before = _span.Mean(channel, begin, middle);
                long scatter = _span.Deviation(channel, begin, middle);
                long step = IntegerMath.Abs(_span.Mean(channel, middle, end) - before);
                if (step > _tolerances.Left(channel, _tolerances.Level(channel, before), scatter))
                {
                    return true;
                }
            }

            return false;
        }

        private bool Moves(int channel, int begin, int end)
        {
            long level = _tolerances.Level(channel, _span.Mean(channel, begin, end));
            long scatter = _span.Deviation(channel, begin, end);
            if (scatter > _tolerances.Scatter(channel, level))
            {
                return true;
            }

            if (_span.Readings(channel, begin, begin + EndBins) == 0 || _span.Readings(channel, end - EndBins, end) == 0)
            {
                return false;
            }

            long drift = _span.Mean(channel, end - EndBins, end) - _span.Mean(channel, begin, begin + EndBins);
            return IntegerMath.Abs(drift) > _tolerances.Drift(channel, level, scatter);
        }
    }
}
