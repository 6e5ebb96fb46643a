using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>
    /// Finds the stretches in which speed and pressures stand still, and measures each when it ends. Knows nothing of steps:
    /// what a hold is called is decided elsewhere.
    /// </summary>
    public sealed class HoldFinder
    {
        private readonly BinSpan _span = new BinSpan();
        private readonly RecentBins _recent = new RecentBins();
        private readonly Tolerances _tolerances;
        private readonly Steadiness _steadiness;
        private readonly SettledPart _settled;
        private readonly Approach _approach;
        private readonly int[] _highest = new int[Channel.Count];
        private readonly int[] _lowest = new int[Channel.Count];
        private readonly int[] _extremes = new int[Channel.Count];

        // Bins since an earlier hold ended or the tags changed: nothing older belongs to the next hold.
        private int _sinceBreak;
        private int _approachFromTenths;
        private int _approachMilliseconds;

        public HoldFinder(SessionHeader header)
        {
            _tolerances = new Tolerances(header);
            _steadiness = new Steadiness(_span, _tolerances);
            _settled = new SettledPart(_span, _tolerances);
            _approach = new Approach(_recent);
        }

        /// <summary>The hold that the last true <see cref="Add"/> or <see cref="Break"/> ended: times, approach and readings.</summary>
        public readonly HoldRecord Ended = new HoldRecord();

        /// <summary>Everything stands still now.</summary>
        public bool IsOpen { get; private set; }

        /// <summary>The last <see cref="Add"/> opened the hold.</summary>
        public bool JustOpened { get; private set; }

        /// <summary>How the speed came to the open hold, from <see cref="JustOpened"/> on.</summary>
        public int ApproachFromTenths => _approachFromTenths;

        public int ApproachMilliseconds => _approachMilliseconds;

        public long ApproachStartMicroseconds { get; private set; }

        /// <summary>Newest means in hundredths over the last half second, for what watches a hold while it lasts.</summary>
        public long LatestHundredths(int channel) => _span.Mean(channel, IntegerMath.Max(0, _span.Count - 5), _span.Count);

        /// <summary>Whether the channel gave readings in the last half second.</summary>
        public bool HasLatest(int channel) => _span.Readings(channel, IntegerMath.Max(0, _span.Count - 5), _span.Count) > 0;

        /// <summary>True when this bin ended a hold; it is in <see cref="Ended"/>.</summary>
        public bool Add(Bin bin)
        {
            JustOpened = false;
            _recent.Add(bin);
            _sinceBreak++;
            _span.Add(bin);
            if (!IsOpen)
            {
                Seek();
                return false;
            }

            GatherExtremes(Steadiness.BinsLeaving);
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
                Open(SettledPart.FewestBins - 1);
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

        private void Seek()
        {
            if (_span.Count > Steadiness.WindowBins)
            {
                _span.DropFirst(_span.Count - Steadiness.WindowBins);
            }

            if (_steadiness.Stands())
            {
                Open(Steadiness.WindowBins - 1);
                JustOpened = true;
            }
        }

        private void Open(int openAge)
        {
            IsOpen = true;
            _approach.Find(openAge, IntegerMath.Max(openAge, _sinceBreak - 1));
            _approachFromTenths = _approach.FromTenths;
            _approachMilliseconds = _approach.Milliseconds;
            ApproachStartMicroseconds = _recent.Start(_approach.ArrivalAge) - (_approachMilliseconds * 1000L);
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                _extremes[channel] = 0;
            }

            for (int age = _approach.ArrivalAge; age >= Steadiness.BinsLeaving; age--)
            {
                GatherExtremes(age);
            }
        }

        private void GatherExtremes(int age)
        {
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                if (_recent.Mean(age, channel) == Bin.NoMean)
                {
                    continue;
                }

                int high = _recent.Highest(age, channel);
                int low = _recent.Lowest(age, channel);
                bool first = _extremes[channel]++ == 0;
                _highest[channel] = first ? high : IntegerMath.Max(_highest[channel], high);
                _lowest[channel] = first ? low : IntegerMath.Min(_lowest[channel], low);
            }
        }

        private bool End(int dropped)
        {
            int end = _span.Count - dropped;
            for (int age = Steadiness.BinsLeaving - 1; age >= dropped; age--)
            {
                GatherExtremes(age);
            }

            bool measured = end >= SettledPart.FewestBins && Measure(end);

            IsOpen = false;
            _sinceBreak = dropped;
            _span.DropFirst(_span.Count - IntegerMath.Min(dropped, _span.Count));
            return measured;
        }

        private bool Measure(int end)
        {
            if (!_settled.Find(0, end))
            {
                return false;
            }

            int begin = _settled.Begin;
            int until = _settled.End;
            Ended.StartMicroseconds = _span.StartOf(begin);
            Ended.DurationMilliseconds = (int)((_span.StartOf(until - 1) + Bin.Microseconds - _span.StartOf(begin)) / 1000);
            Ended.ApproachFromTenths = _approachFromTenths;
            Ended.ApproachMilliseconds = _approachMilliseconds;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                HoldReading reading = Ended.Readings[channel];
                _settled.Measure(channel, begin, until, reading);
                reading.Peak = _highest[channel];
                reading.Lowest = _lowest[channel];
            }

            return true;
        }
    }
}
