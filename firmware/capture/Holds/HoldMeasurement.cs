using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>
    /// Measures a hold that has ended, while readings go on: its settled part, then channel by channel level, scatter, peak and what the mean is worth.
    /// A little at a time, so that no sample set waits for it.
    /// </summary>
    public sealed class HoldMeasurement
    {
        /// <summary>What was found; whole once <see cref="Advance"/> said so and <see cref="IsHold"/>.</summary>
        public readonly HoldRecord Hold = new HoldRecord();

        private readonly BinSpan _kept;
        private readonly Agreement _agreement;
        private readonly Correlation _correlation;
        private readonly SettledPart _settled;
        private bool _isSought;
        private int _channel;
        private bool _hasLevel;
        private long _speedBias;

        public HoldMeasurement(BinSpan span, Tolerances tolerances)
        {
            _kept = new BinSpan(span);
            _agreement = new Agreement(_kept, tolerances);
            _correlation = new Correlation(_kept);
            _settled = new SettledPart(_kept, tolerances, _agreement);
        }

        /// <summary>Begun and not yet done.</summary>
        public bool IsRunning;

        /// <summary>After the last <see cref="Advance"/>: it was a hold.</summary>
        public bool IsHold { get; private set; }

        /// <summary>The span's first bins are a hold that has ended.</summary>
        /// <param name="speedBiasHundredths">How far its speed may be off to one side.</param>
        public void Begin(BinSpan span, int count, long speedBiasHundredths)
        {
            _speedBias = speedBiasHundredths * 10;
            _kept.Keep(span, count);
            _settled.Seek(0, count);
            _isSought = true;
            _channel = 0;
            IsHold = false;
            IsRunning = true;
        }

        /// <summary>Does a little; true when that was the last.</summary>
        public bool Advance()
        {
            if (_isSought)
            {
                _isSought = !_settled.Advance();
                if (!_isSought)
                {
                    TakePart();
                }
            }
            else
            {
                Measure();
            }

            return !IsRunning;
        }

        private void TakePart()
        {
            IsRunning = _settled.IsThere;
            if (!IsRunning)
            {
                return;
            }

            int begin = _settled.Begin;
            int until = _settled.End;
            Hold.StartMicroseconds = _kept.StartOf(begin);
            Hold.DurationMilliseconds = (int)((_kept.StartOf(until - 1) + Bin.Microseconds - Hold.StartMicroseconds) / 1000);
            Hold.Drifting = (byte)_settled.Drifting;
            _correlation.Begin(_channel, begin, until);
        }

        private void Measure()
        {
            if (!_correlation.Advance())
            {
                return;
            }

            HoldReading reading = Hold.Readings[_channel];
            if (!_hasLevel)
            {
                _hasLevel = true;
                MeasureLevel(_channel, _settled.Begin, _settled.End, reading);
                return;
            }

            _hasLevel = false;
            if (reading.Present)
            {
                MeasureError(_channel, _settled.Begin, _settled.End, reading);
            }

            _channel++;
            IsHold = _channel == Channel.Count;
            IsRunning = !IsHold;
            if (IsRunning)
            {
                _correlation.Begin(_channel, _settled.Begin, _settled.End);
            }
        }

        private void MeasureLevel(int channel, int begin, int end, HoldReading reading)
        {
            int readings = _kept.Readings(channel, begin, end);
            reading.Clear();
            if (readings * 2 < end - begin || readings < SettledPart.FewestBins / 2)
            {
                return;
            }

            reading.Present = true;
            reading.SettledHundredths = (int)_kept.Mean(channel, begin, end);
            reading.DeviationHundredths = (int)_kept.Deviation(channel, begin, end);
            long milliseconds = (_kept.StartOf(end - 1) - _kept.StartOf(begin)) / 1000;
            reading.SlopeHundredthsPerSecond = milliseconds <= 0 ? 0 : (int)(_agreement.Drift(channel, begin, end) * 1500 / milliseconds);
        }

        // Bins that are alike count for fewer. What drift is left adds as a rectangle.
        private void MeasureError(int channel, int begin, int end, HoldReading reading)
        {
            int readings = _kept.Readings(channel, begin, end);
            long drift = _agreement.Drift(channel, begin, end);
            long noise = _agreement.Noise(channel, begin, end) * 10;
            int correlation = Correlation.Unbiased(_correlation.PerMille(noise / 10), readings);
            long wider = Correlation.VariancePerMille(correlation);
            long variance = noise * noise / readings * wider / 1000;

            // Without drift the difference between the thirds varies as six of the mean: only what is more than that is drift.
            long left = ((drift * drift * 100) - (6 * variance)) / 12;
            variance += channel == Channel.Speed ? _speedBias * _speedBias : 0;
            reading.StandardErrorThousandths = IntegerMath.Clamp(IntegerMath.SquareRoot(variance + (left < 0 ? 0 : left)), 0, int.MaxValue);
            reading.DegreesOfFreedom = IntegerMath.Max(1, (int)(readings * 1000L / wider) - 1);
        }
    }
}
