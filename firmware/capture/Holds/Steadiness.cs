using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>The two questions put to the newest bins: does everything stand still, and has something left its place.</summary>
    public sealed class Steadiness
    {
        public const int WindowBins = 15;
        private const int EndBins = 5;
        private const int NewestBins = 3;

        // The newest bins are the ones that left; one more was half way.
        public const int BinsLeaving = NewestBins + 1;
        private const int FewestReadings = 6;

        /// <summary>
        /// An engine takes half a second and longer to another speed, and its speed is read over the last half second: the bins on the way there
        /// widen the scatter that the way is held against.
        /// </summary>
        private const int SpeedArrivesBins = 10;

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

        /// <summary>How many of the newest bins lie elsewhere than the window before them, or are on the way there; 0 where none do.</summary>
        public int BinsLeft()
        {
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                if (Left(channel, 0))
                {
                    return BinsLeaving;
                }
            }

            return Left(Channel.Speed, SpeedArrivesBins) ? BinsLeaving + SpeedArrivesBins : 0;
        }

        // The newest bins against the window that ended so many bins before them.
        private bool Left(int channel, int between)
        {
            int end = _span.Count;
            int newest = end - NewestBins;
            int middle = newest - between;
            int begin = IntegerMath.Max(0, middle - WindowBins);
            if (_span.Readings(channel, newest, end) == 0 || middle <= 0 || _span.Readings(channel, begin, middle) < FewestReadings)
            {
                return false;
            }

            long before = _span.Mean(channel, begin, middle);
            long scatter = _span.Deviation(channel, begin, middle);
            long step = IntegerMath.Abs(_span.Mean(channel, newest, end) - before);
            return step > _tolerances.Left(channel, _tolerances.Level(channel, before), scatter);
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
