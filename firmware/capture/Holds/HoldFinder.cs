using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>
    /// Finds the stretches in which speed and pressures stand still. Each is measured after it has ended, a little with each sample set that follows.
    /// Knows nothing of steps: what a hold is called is decided elsewhere.
    /// </summary>
    public sealed class HoldFinder
    {
        private readonly BinSpan _span = new BinSpan();
        private readonly RecentBins _recent = new RecentBins();
        private readonly Steadiness _steadiness;
        private readonly Approach _approach;
        private readonly Extremes _extremes;
        private readonly HoldMeasurement _measurement;

        // Bins since an earlier hold ended or the tags changed: nothing older belongs to the next hold.
        private int _sinceBreak;

        // Where the hold that is measured ends.
        private int _endNumber;
        private int _leastBias;

        public HoldFinder(SessionHeader header)
        {
            Tolerances tolerances = new Tolerances(header);
            _steadiness = new Steadiness(_span, tolerances);
            _approach = new Approach(_recent);
            _extremes = new Extremes(_recent);
            _measurement = new HoldMeasurement(_span, tolerances);
        }

        /// <summary>The hold that was measured last: times, approach and readings.</summary>
        public HoldRecord Ended => _measurement.Hold;

        /// <summary>One has ended, was long and steady enough, and is measured. To be taken before another one is.</summary>
        public bool IsMeasured;

        /// <summary>Channels that <see cref="Look"/> took a closer look at.</summary>
        public int ChannelsLookedAt => _steadiness.ChannelsLookedAt;

        /// <summary>One has ended and is not measured yet.</summary>
        public bool IsMeasuring => _measurement.IsRunning;

        /// <summary><see cref="Ended"/> was taken.</summary>
        public void Take() => IsMeasured = false;

        /// <summary>Everything stands still now.</summary>
        public bool IsOpen;

        /// <summary>The last <see cref="Look"/> would have opened a hold, but for one that is measured and not taken while the next is to be measured: to be looked again.</summary>
        public bool IsHeldUp;

        /// <summary>One is measured and not taken, and with the next bin the one after it must be measured, too.</summary>
        public bool MustBeTaken => IsMeasured && _measurement.IsRunning && IsLate(_recent.Newest + 1);

        /// <summary>The last <see cref="Look"/> opened the hold.</summary>
        public bool JustOpened;

        /// <summary>How the speed came to the hold is not known yet.</summary>
        public bool IsApproachSought => _approach.IsRunning;

        public int ApproachFromTenths => _approach.FromTenths;

        public int ApproachMilliseconds => _approach.Milliseconds;

        public long ApproachStartMicroseconds => _approach.StartMicroseconds;

        /// <summary>Newest means in hundredths over the last half second, for what watches a hold while it lasts.</summary>
        public long LatestHundredths(int channel) => _span.Mean(channel, IntegerMath.Max(0, _span.Count - 5), _span.Count);

        /// <summary>Whether the channel gave readings in the last half second.</summary>
        public bool HasLatest(int channel) => _span.Readings(channel, IntegerMath.Max(0, _span.Count - 5), _span.Count) > 0;

        /// <summary>Takes a bin, which is to be looked at before the next one.</summary>
        public void Take(Bin bin)
        {
            _recent.Add(bin);
            _sinceBreak++;
            _span.Add(bin);
            if (IsLate(_recent.Newest))
            {
                FinishMeasuring();
            }
        }

        /// <summary>Looks at the newest bin; true when it ended a hold, which is to be measured then.</summary>
        /// <param name="speedBiasHundredths">How far its speed may be off to one side, as long as the pickup is as it is.</param>
        public bool Look(int speedBiasHundredths = 0)
        {
            JustOpened = false;
            if (!IsOpen)
            {
                Seek();
                return false;
            }

            // What a run-up left behind fades while the hold lasts; what lost or doubled edges make stays.
            _leastBias = IntegerMath.Min(_leastBias, speedBiasHundredths);

            int left = _steadiness.BinsLeft();
            return left > 0 && End(left);
        }

        /// <summary>
        /// Something that readings do not show has changed (gear tag, mark, a gap): what comes is another hold.
        /// True when one was open and long enough.
        /// </summary>
        /// <param name="untrusted">Newest bins that may already belong to the other side, because tags come late.</param>
        public bool Break(int untrusted)
        {
            JustOpened = false;
            if (!IsOpen && untrusted == 0 && _steadiness.Stands(SettledPart.FewestBins))
            {
                // Nothing more comes: what stands just long enough to be measured is a hold, too.
                _span.DropFirst(_span.Count - SettledPart.FewestBins);
                Open(SettledPart.FewestBins);
            }

            bool ended = IsOpen && End(untrusted);
            _span.Clear();
            _sinceBreak = 0;
            IsOpen = false;
            return ended;
        }

        /// <summary>After a gap in time nothing before it says how the readings came here.</summary>
        public void Forget()
        {
            _recent.Clear();
            _span.Clear();
            IsOpen = false;
            _sinceBreak = 0;
        }

        /// <summary>Does a little of what is due; true when there was something.</summary>
        public bool Advance()
        {
            if (_approach.IsRunning)
            {
                if (_approach.Advance())
                {
                    _extremes.Begin(_approach.Arrival);
                }

                return true;
            }

            // An open hold's newest bins may belong to the way out of it.
            if (IsOpen && !_measurement.IsRunning)
            {
                return !_extremes.GatherUntil(_recent.Newest + 1 - Steadiness.MostBinsLeft);
            }

            if (!_measurement.IsRunning)
            {
                return false;
            }

            if (_extremes.GatherUntil(_endNumber) && _measurement.Advance() && _measurement.IsHold)
            {
                Complete();
            }

            return true;
        }

        private void Seek()
        {
            if (_span.Count > Steadiness.WindowBins)
            {
                _span.DropFirst(_span.Count - Steadiness.WindowBins);
            }

            IsHeldUp = false;
            if (_steadiness.Stands())
            {
                IsHeldUp = IsMeasured && _measurement.IsRunning;
                if (!IsHeldUp)
                {
                    Open(Steadiness.WindowBins);
                    JustOpened = true;
                }
            }
        }

        private bool IsLate(int newest) => newest - _endNumber >= BinSpan.MostAfterKept - 1;

        private void Open(int bins)
        {
            FinishMeasuring();
            IsOpen = true;
            _leastBias = int.MaxValue;
            _approach.Begin(_recent.Newest + 1 - bins, _recent.Newest + 1 - IntegerMath.Max(bins, _sinceBreak));
            if (!_approach.IsRunning)
            {
                _extremes.Begin(_approach.Arrival);
            }
        }

        private bool End(int dropped)
        {
            int count = _span.Count - dropped;
            bool isLong = count >= SettledPart.FewestBins;
            _endNumber = _recent.Newest + 1 - dropped;
            if (isLong)
            {
                _measurement.Begin(_span, count, _leastBias == int.MaxValue ? 0 : _leastBias);
            }

            IsOpen = false;
            _sinceBreak = dropped;
            _span.DropFirst(_span.Count - IntegerMath.Min(dropped, _span.Count));
            return isLong;
        }

        // The next hold needs what the last one is measured with.
        private void FinishMeasuring()
        {
            while (_measurement.IsRunning)
            {
                Advance();
            }
        }

        private void Complete()
        {
            IsMeasured = true;
            Ended.ApproachFromTenths = _approach.FromTenths;
            Ended.ApproachMilliseconds = _approach.Milliseconds;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                Ended.Readings[channel].Peak = _extremes.Highest(channel);
                Ended.Readings[channel].Lowest = _extremes.Lowest(channel);
            }
        }
    }
}
