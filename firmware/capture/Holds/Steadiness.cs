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
        private const int BinsLeaving = NewestBins + 1;
        private const int FewestReadings = 6;

        // An engine takes half a second and longer to another speed, and its speed is read over the last half second: the bins on the way there
        // widen the scatter that the way is held against.
        private const int SpeedArrivesBins = 10;

        // Over so long a foot drifts farther than it does between neighbouring windows; what parts two steps is four times as much.
        private const int SurelyElsewhere = 4;

        /// <summary>The most that <see cref="BinsLeft"/> says.</summary>
        public const int MostBinsLeft = BinsLeaving + SpeedArrivesBins;

        private readonly BinSpan _span;
        private readonly Tolerances _tolerances;

        // A step that is none on any level, however little noise there is.
        private readonly long[] _stillHundredths = new long[Channel.Count];

        public Steadiness(BinSpan span, Tolerances tolerances)
        {
            _span = span;
            _tolerances = tolerances;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                _stillHundredths[channel] = tolerances.Left(channel, 0, 0);
            }
        }

        /// <summary>Channels that the last question took a closer look at, which is what it costs.</summary>
        public int ChannelsLookedAt { get; private set; }

        /// <summary>Every channel that has readings stands still over the last window; false where none has.</summary>
        public bool Stands() => Stands(WindowBins);

        /// <summary>The same over the last so many bins.</summary>
        public bool Stands(int bins)
        {
            ChannelsLookedAt = 0;
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
                ChannelsLookedAt++;
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
            // Mostly nothing has moved by as much as stands still on any level, which costs little to tell.
            int end = _span.Count;
            int newest = end - NewestBins;
            bool isLong = newest >= WindowBins;
            ChannelsLookedAt = 0;
            _span.HoldAgainst(newest - WindowBins, newest, newest, end);
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                if (!(isLong && _span.MeansAgree(channel, _stillHundredths[channel])) && Left(channel, 0, 1))
                {
                    return BinsLeaving;
                }
            }

            newest -= SpeedArrivesBins;
            _span.HoldAgainst(newest - WindowBins, newest, end - NewestBins, end);
            bool stays = newest >= WindowBins && _span.MeansAgree(Channel.Speed, SurelyElsewhere * _stillHundredths[Channel.Speed]);
            return !stays && Left(Channel.Speed, SpeedArrivesBins, SurelyElsewhere) ? MostBinsLeft : 0;
        }

        // The newest bins against the window that ended so many bins before them.
        private bool Left(int channel, int between, int times)
        {
            ChannelsLookedAt++;
            int end = _span.Count;
            int newest = end - NewestBins;
            int middle = newest - between;
            int begin = IntegerMath.Max(0, middle - WindowBins);
            if (middle <= 0 || !_span.TryMean(channel, begin, middle, FewestReadings, out long before) || !_span.TryMean(channel, newest, end, 1, out long after))
            {
                return false;
            }

            long step = after > before ? after - before : before - after;

            // Scatter costs a root: it is asked for only where the step is more than stands still in any case.
            long level = _tolerances.Level(channel, before);
            return step > times * _tolerances.Left(channel, level, 0)
                && step > _tolerances.Left(channel, level, _span.Deviation(channel, begin, middle));
        }

        private bool Moves(int channel, int begin, int end)
        {
            bool hasEnds = _span.TryMean(channel, begin, begin + EndBins, 1, out long first) & _span.TryMean(channel, end - EndBins, end, 1, out long last);
            long drift = !hasEnds ? 0 : last > first ? last - first : first - last;
            long level = _tolerances.Level(channel, _span.Mean(channel, begin, end));
            if (drift > _tolerances.Drift(channel, level, 0) && drift > _tolerances.Drift(channel, level, _tolerances.Scatter(channel, level)))
            {
                // Scatter that would excuse the drift is more than there may be.
                return true;
            }

            // A root only where the drift needs the scatter for an excuse.
            long most = _tolerances.Scatter(channel, level) + 1;
            return _span.Variance(channel, begin, end) >= most * most
                || (drift > _tolerances.Drift(channel, level, 0) && drift > _tolerances.Drift(channel, level, _span.Deviation(channel, begin, end)));
        }
    }
}
