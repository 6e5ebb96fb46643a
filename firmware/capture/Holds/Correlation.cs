namespace LoggerBox.Capture.Holds
{
    /// <summary>
    /// How much wider the mean of a stretch scatters because its bins are alike: sqrt((1 + r) / (1 - r)) of noise whose neighbours
    /// correlate by r. From the differences of neighbours (von Neumann), which a slow drift hardly touches; some of them at a time.
    /// </summary>
    public sealed class Correlation
    {
        // Of a long stretch as many pairs are looked at, evenly spread: more would take the logger longer than it tells.
        private const int MostPairs = 120;
        private const int FewestPairs = 8;
        private const int PairsAtATime = 18;

        // 0.9: beyond it the mean of a minute tells little. Below 0 only by chance.
        private const int MostPerMille = 900;
        private const int LeastPerMille = -200;

        private readonly BinSpan _span;
        private int _channel;
        private int _next;
        private int _end;
        private int _stride;
        private int _pairs;
        private long _squares;

        public Correlation(BinSpan span)
        {
            _span = span;
        }

        /// <summary>Bins begin..end of a channel are to be looked at.</summary>
        public void Begin(int channel, int begin, int end)
        {
            _channel = channel;
            _next = begin;
            _end = end;
            _stride = IntegerMath.Max(1, (end - begin) / MostPairs);
            _pairs = 0;
            _squares = 0;
        }

        /// <summary>Looks at some of them; true once all were.</summary>
        public bool Advance()
        {
            _pairs += _span.AddSteps(_channel, ref _next, _end, _stride, PairsAtATime, ref _squares);
            return _next + 1 >= _end;
        }

        /// <summary>Correlation of neighbouring bins in thousandths, -200 to 900.</summary>
        /// <param name="noise">Standard deviation of the bins about their line.</param>
        public int PerMille(long noise)
        {
            long twice = 2 * noise * noise * _pairs / 1000;
            return _pairs < FewestPairs || twice == 0 ? 0 : IntegerMath.Clamp(1000 - (_squares / twice), LeastPerMille, MostPerMille);
        }

        /// <summary>What short stretches show less of than there is: about (1 + 3 r) / n (Kendall 1954).</summary>
        public static int Unbiased(int correlation, int bins) =>
            IntegerMath.Clamp(correlation + ((1000L + (3 * correlation)) / IntegerMath.Max(1, bins)), LeastPerMille, MostPerMille);

        /// <summary>The part of it that is hardly chance: one standard error of the estimate less.</summary>
        public static int Certain(int correlation, int bins) =>
            IntegerMath.Max(0, correlation - (1000 / IntegerMath.Max(1, (int)IntegerMath.SquareRoot(bins))));

        /// <summary>
        /// Variance of a mean, as a multiple of what independent bins would give, in thousandths: 1 + 2 r / (1 - q). Bins are means themselves,
        /// so the first neighbour is more like than the noise fades from there on, and q is less than r: (r + r r) / 2 for noise that fades
        /// evenly (AR(1) samples, five and more in a bin).
        /// </summary>
        public static long VariancePerMille(int correlation)
        {
            long fading = (correlation + (correlation * correlation / 1000)) / 2;
            return 1000 + (2000L * correlation / (1000 - fading));
        }
    }
}
