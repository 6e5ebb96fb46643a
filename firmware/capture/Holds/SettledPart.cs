using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>
    /// Finds where in a hold the last channel has settled, and measures from there. The head of an exponential tail differs from its end:
    /// the part is shortened from the front until the first and the last third agree.
    /// </summary>
    public sealed class SettledPart
    {
        /// <summary>Shorter than this nothing is called settled.</summary>
        public const int FewestBins = 12;
        private const int Candidates = 24;
        private const int BatchBins = 5;
        private const int MostBatches = 20;

        private readonly BinSpan _span;
        private readonly Tolerances _tolerances;

        public SettledPart(BinSpan span, Tolerances tolerances)
        {
            _span = span;
            _tolerances = tolerances;
        }

        /// <summary>First bin of the settled part that ends before <paramref name="end"/>; the hold begins at <paramref name="from"/>.</summary>
        public int Begin(int from, int end)
        {
            int last = end - FewestBins;
            int step = IntegerMath.Max(1, (last - from) / Candidates);
            int best = from;
            long least = long.MaxValue;
            for (int begin = from; begin <= last; begin += step)
            {
                long drift = WorstDriftPerMille(begin, end);
                if (drift <= 1000)
                {
                    return begin;
                }

                if (drift < least)
                {
                    least = drift;
                    best = begin;
                }
            }

            return best;
        }

        /// <summary>
        /// Half as much again as what counts as settled: an engine that recovers from a lifted pedal passes through no hold.
        /// A pressure that still creeps is another matter: that may be the fault that is looked for.
        /// </summary>
        public bool SpeedStillMoves(int begin, int end)
        {
            long level = _span.Mean(Channel.Speed, begin, end);
            return DriftPerMille(Channel.Speed, begin, end) > 1500
                || _span.Deviation(Channel.Speed, begin, end) > _tolerances.Scatter(Channel.Speed, level);
        }

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
            long drift = Drift(channel, begin, end);
            long milliseconds = (_span.StartOf(end - 1) - _span.StartOf(begin)) / 1000;
            reading.SlopeHundredthsPerSecond = milliseconds <= 0 ? 0 : (int)(drift * 1500 / milliseconds);
            MeasureError(channel, begin, end, drift, reading);
        }

        // Means of batches longer than the noise is correlated scatter like the mean itself does. What drift is left adds as a rectangle.
        private void MeasureError(int channel, int begin, int end, long drift, HoldReading reading)
        {
            int size = IntegerMath.Max(BatchBins, (end - begin) / MostBatches);
            int batches = IntegerMath.Max(2, (end - begin) / size);
            long sum = 0, squares = 0;
            long centre = _span.Mean(channel, begin, end);
            int used = 0;
            for (int i = 0; i < batches; i++)
            {
                int a = begin + ((end - begin) * i / batches);
                int b = begin + ((end - begin) * (i + 1) / batches);
                if (_span.Readings(channel, a, b) == 0)
                {
                    continue;
                }

                long distance = _span.Mean(channel, a, b) - centre;
                sum += distance;
                squares += distance * distance;
                used++;
            }

            long scatter = RunningStatistics.Deviation(used, sum, squares, 10);
            long variance = used == 0 ? 0 : scatter * scatter / used;
            long left = drift * 10 * drift * 10 / 12;
            reading.StandardErrorThousandths = IntegerMath.Clamp(IntegerMath.SquareRoot(variance + left), 0, int.MaxValue);
            reading.DegreesOfFreedom = used < 2 ? 1 : used - 1;
        }

        private long WorstDriftPerMille(int begin, int end)
        {
            long worst = 0;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                long share = DriftPerMille(channel, begin, end);
                worst = share > worst ? share : worst;
            }

            return worst;
        }

        // Difference of first and last third in thousandths of what counts as none; 0 where the channel has too few readings.
        private long DriftPerMille(int channel, int begin, int end)
        {
            if (_span.Readings(channel, begin, end) * 2 < end - begin)
            {
                return 0;
            }

            long level = _tolerances.Level(channel, _span.Mean(channel, begin, end));
            long noise = _span.Deviation(channel, begin, end) * 2 / IntegerMath.Max(1, (int)IntegerMath.SquareRoot(end - begin));
            return IntegerMath.Abs(Drift(channel, begin, end)) * 1000 / (_tolerances.Settled(channel, level) + noise);
        }

        private long Drift(int channel, int begin, int end)
        {
            int third = (end - begin) / 3;
            return _span.Readings(channel, begin, begin + third) == 0 || _span.Readings(channel, end - third, end) == 0
                ? 0
                : _span.Mean(channel, end - third, end) - _span.Mean(channel, begin, begin + third);
        }
    }
}
