using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>
    /// Finds where in a hold the last channel has settled, and measures from there: the part is shortened from the front until its head agrees
    /// with its end.
    /// </summary>
    public sealed class SettledPart
    {
        /// <summary>Shorter than this nothing is called settled.</summary>
        public const int FewestBins = 12;

        // A drift of one standard deviation a second is told from a stand in three seconds, not in less.
        private const int SureBins = 30;
        private const int Candidates = 24;

        private readonly BinSpan _span;
        private readonly Tolerances _tolerances;
        private readonly Agreement _agreement;
        private readonly Correlation _correlation;
        private readonly SteadyDrift _drift;

        public SettledPart(BinSpan span, Tolerances tolerances)
        {
            _span = span;
            _tolerances = tolerances;
            _agreement = new Agreement(span, tolerances);
            _correlation = new Correlation(span);
            _drift = new SteadyDrift(span, tolerances);
        }

        /// <summary>The part that the last <see cref="Find"/> found: its first bin, and the one after its last.</summary>
        public int Begin { get; private set; }

        public int End { get; private set; }

        /// <summary>
        /// Looks for the settled part of a hold. Where no three seconds agree as closely as their noise lets one see, a foot or an idle wanders:
        /// then what matters on a truck is asked for. False where there is none: an engine that recovers from a lifted pedal passes through none
        /// (half as much again as what matters), and a straight drift is none.
        /// </summary>
        public bool Find(int from, int end)
        {
            _agreement.Learn(from, end);
            End = end;
            Begin = FinelyFrom(from, end);
            bool sure = End - Begin >= SureBins;
            if (!sure || (End - Begin) * 2 < end - from)
            {
                int until = FinelyUntil(from, end);
                if (until - from >= SureBins && until - from > End - Begin)
                {
                    Begin = from;
                    End = until;
                    sure = true;
                }
            }

            if (!sure)
            {
                Begin = Coarsely(from, end);
            }

            long level = _span.Mean(Channel.Speed, Begin, End);
            return _agreement.CoarsePerMille(Channel.Speed, Begin, End) <= 1500
                && _span.Deviation(Channel.Speed, Begin, End) <= _tolerances.Scatter(Channel.Speed, level)
                && (sure || !_drift.Is(from, end));
        }

        // First bin from which all agrees finely to the end; the end where none does.
        private int FinelyFrom(int from, int end)
        {
            int last = end - FewestBins;
            int step = Step(from, last);
            for (int begin = from; begin <= last; begin += step)
            {
                if (_agreement.WorstFinely(begin, end, false) > Agreement.Agrees)
                {
                    continue;
                }

                // Between two candidates bin by bin: what settles in half a second is settled after half a second.
                int first = IntegerMath.Max(from, begin - step + 1);
                while (first < begin && _agreement.WorstFinely(first, end, false) > Agreement.Agrees)
                {
                    first++;
                }

                return first;
            }

            return end;
        }

        // A hold may go slowly over into another level: the bin up to which all agrees finely from the beginning; the beginning where none does.
        private int FinelyUntil(int from, int end)
        {
            int step = Step(from + SureBins, end);
            for (int until = end; until >= from + SureBins; until -= step)
            {
                if (_agreement.WorstFinely(from, until, true) <= Agreement.Agrees && _agreement.WorstFinely(from, until, false) <= Agreement.Agrees)
                {
                    return until;
                }
            }

            return from;
        }

        private int Coarsely(int from, int end)
        {
            int last = end - FewestBins;
            int step = Step(from, last);
            int best = from;
            int least = int.MaxValue;
            for (int begin = from; begin <= last && least > Agreement.Agrees; begin += step)
            {
                int unsettled = _agreement.WorstCoarsely(begin, end);
                if (unsettled < least)
                {
                    least = unsettled;
                    best = begin;
                }
            }

            return best;
        }

        private static int Step(int from, int last) => IntegerMath.Max(1, (last - from) / Candidates);

        /// <summary>Fills the reading of one channel over bins begin..end.</summary>
        public void Measure(int channel, int begin, int end, HoldReading reading)
        {
            int readings = _span.Readings(channel, begin, end);
            reading.Clear();
            if (readings * 2 < end - begin || readings < FewestBins / 2)
            {
                return;
            }

            reading.Present = true;
            reading.SettledHundredths = (int)_span.Mean(channel, begin, end);
            reading.DeviationHundredths = (int)_span.Deviation(channel, begin, end);
            long drift = _agreement.Drift(channel, begin, end);
            long milliseconds = (_span.StartOf(end - 1) - _span.StartOf(begin)) / 1000;
            reading.SlopeHundredthsPerSecond = milliseconds <= 0 ? 0 : (int)(drift * 1500 / milliseconds);
            MeasureError(channel, begin, end, drift, reading);
        }

        // Bins that are alike count for fewer. What drift is left adds as a rectangle.
        private void MeasureError(int channel, int begin, int end, long drift, HoldReading reading)
        {
            int readings = _span.Readings(channel, begin, end);
            long noise = _agreement.Noise(channel, begin, end) * 10;
            int correlation = Correlation.Unbiased(_correlation.PerMille(channel, begin, end, noise / 10), readings);
            long wider = Correlation.VariancePerMille(correlation);
            long variance = noise * noise / readings * wider / 1000;

            // Without drift the difference between the thirds varies as six of the mean: only what is more than that is drift.
            long left = ((drift * drift * 100) - (6 * variance)) / 12;
            reading.StandardErrorThousandths = IntegerMath.Clamp(IntegerMath.SquareRoot(variance + (left < 0 ? 0 : left)), 0, int.MaxValue);
            reading.DegreesOfFreedom = IntegerMath.Max(1, (int)(readings * 1000L / wider) - 1);
        }
    }
}
