using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>
    /// Does a stretch of bins agree with itself? Finely: measured against the noise that it has about its own straight line, so that a
    /// drift does not excuse itself. Coarsely: against what matters on a truck.
    /// </summary>
    public sealed class Agreement
    {
        /// <summary>Per mille: up to this the stretch agrees.</summary>
        public const int Agrees = 1000;
        private const int EdgeBins = 5;
        private const int FewestBins = 3 * EdgeBins;

        // Five bins that are all alike scatter sqrt(5) as much as five independent ones.
        private const int MostWiderEdge = 2236;

        private readonly BinSpan _span;
        private readonly Tolerances _tolerances;
        private readonly Correlation _correlation;
        private int _half;
        private int _learnedEnd;
        private int _learning;

        // How much wider means scatter than those of independent bins, thousandths.
        private readonly int[] _wider = new int[Channel.Count];

        public Agreement(BinSpan span, Tolerances tolerances)
        {
            _span = span;
            _tolerances = tolerances;
            _correlation = new Correlation(span);
        }

        /// <summary>The kind of noise is to be taken from the later half of a stretch, for the questions that follow.</summary>
        public void BeginLearning(int from, int end)
        {
            _half = (from + end) / 2;
            _learnedEnd = end;
            _learning = 0;
            _correlation.Begin(0, _half, end);
        }

        /// <summary>Takes some of it; true once all was taken.</summary>
        public bool Learn()
        {
            if (_correlation.Advance())
            {
                int correlation = _correlation.PerMille(Noise(_learning, _half, _learnedEnd));
                int certain = Correlation.Certain(correlation, _learnedEnd - _half);
                _wider[_learning] = (int)IntegerMath.SquareRoot(Correlation.VariancePerMille(certain) * 1000);
                _learning++;
                _correlation.Begin(IntegerMath.Min(_learning, Channel.Count - 1), _half, _learnedEnd);
            }

            return _learning == Channel.Count;
        }

        /// <summary>A channel agrees as closely as its noise lets one see.</summary>
        /// <param name="atEnd">The last half second is held against the rest, not the first.</param>
        public bool AgreesFinely(int channel, int begin, int end, bool atEnd) =>
            IsSparse(channel, begin, end) || (EdgeAgrees(channel, begin, end, atEnd) && ThirdsAgree(channel, begin, end));

        /// <summary>Difference of first and last third, in thousandths of what matters; 0 where the channel has too few readings.</summary>
        public int CoarsePerMille(int channel, int begin, int end)
        {
            if (IsSparse(channel, begin, end))
            {
                return 0;
            }

            long level = _tolerances.Level(channel, _span.Mean(channel, begin, end));
            long noise = _span.Deviation(channel, begin, end) * 2 / IntegerMath.Max(1, (int)IntegerMath.SquareRoot(end - begin));
            return PerMille(Drift(channel, begin, end), _tolerances.Matters(channel, level) + noise);
        }

        /// <summary>Mean of the last third less that of the first, hundredths.</summary>
        public long Drift(int channel, int begin, int end)
        {
            int third = (end - begin) / 3;
            return _span.Readings(channel, begin, begin + third) == 0 || _span.Readings(channel, end - third, end) == 0
                ? 0
                : _span.Mean(channel, end - third, end) - _span.Mean(channel, begin, begin + third);
        }

        /// <summary>Scatter about the straight line, hundredths.</summary>
        public long Noise(int channel, int begin, int end) => IntegerMath.SquareRoot(NoiseSquare(channel, begin, end));

        // Of a line that rises by d between the thirds, 3 d d / 16 of the variance is its own.
        private long NoiseSquare(int channel, int begin, int end)
        {
            long drift = Drift(channel, begin, end);
            return _span.Variance(channel, begin, end) - (3 * drift * drift / 16);
        }

        // Three standard errors of the difference of the thirds: sqrt(6 / n) of the scatter each, so 54 / n of its square.
        private bool ThirdsAgree(int channel, int begin, int end)
        {
            long drift = Drift(channel, begin, end);
            if (PerMille(drift, Floor(channel, begin, end)) <= Agrees)
            {
                return true;
            }

            long independent = drift * 1000 / _wider[channel];
            return independent * independent * (end - begin) / 54 <= NoiseSquare(channel, begin, end);
        }

        // The half second at the edge against the half that is away from it. The tail of an approach at its head is what the bins scatter by at
        // most, which is half of what the samples do at 50 a second: two and a half standard errors of five bins.
        private bool EdgeAgrees(int channel, int begin, int end, bool atEnd)
        {
            int edge = atEnd ? end - EdgeBins : begin;
            if (end - begin < FewestBins || _span.Readings(channel, edge, edge + EdgeBins) == 0)
            {
                return true;
            }

            int middle = (begin + end) / 2;
            int first = atEnd ? begin : middle;
            int last = atEnd ? middle : end;
            long away = _span.Mean(channel, first, last);
            long off = _span.Mean(channel, edge, edge + EdgeBins) - away;
            if (PerMille(off, _tolerances.Settled(channel, _tolerances.Level(channel, away))) <= Agrees)
            {
                return true;
            }

            long independent = off * 10000 / (11 * IntegerMath.Min(_wider[channel], MostWiderEdge));
            return independent * independent <= NoiseSquare(channel, first, last);
        }

        private long Floor(int channel, int begin, int end) => _tolerances.Settled(channel, _tolerances.Level(channel, _span.Mean(channel, begin, end)));

        private bool IsSparse(int channel, int begin, int end) => _span.Readings(channel, begin, end) * 2 < end - begin;

        private static int PerMille(long difference, long allowed) =>
            IntegerMath.Clamp((difference < 0 ? -difference : difference) * 1000 / (allowed < 1 ? 1 : allowed), 0, int.MaxValue);
    }
}
