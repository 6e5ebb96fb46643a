using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>
    /// Tells a drift along a straight line from an approach that ends: a short end of either looks settled. A drift goes on from end to end
    /// by more than about half a standard deviation of the samples a second; what is known of scatter and slope allows for no more exact word.
    /// </summary>
    public sealed class SteadyDrift
    {
        // Thousandths of the samples' standard deviation a second, over the whole stretch and over its later half: over five seconds a slope of
        // one standard deviation is known to 0.05 and to 0.13.
        private const int WholePerMille = 650;
        private const int HalfPerMille = 460;

        // What may be a drift is called one, which refuses nothing. In less than three seconds the later half says too little to be asked.
        private const int WholeMayPerMille = 300;
        private const int HalfMayPerMille = 200;
        private const int ShortBins = 30;
        private const int MostBins = 100;

        // A foot holds no speed to better than four tenths of a percent a second. A clutch that slips under load lets it creep twice as fast,
        // while the pressures stand: with pressures as witnesses that much is a hold.
        private const int FootSharePerSecond = 250;
        private const int LoadedSharePerSecond = 125;

        private readonly BinSpan _span;
        private readonly Tolerances _tolerances;
        private readonly StraightLine _line;
        private int _first;
        private int _half;
        private int _end;
        private int _channel;
        private long _footAllows;
        private long _wholeSlope;
        private long _scatter;
        private bool _inHalf;
        private bool _bySpeed;

        public SteadyDrift(BinSpan span, Tolerances tolerances)
        {
            _span = span;
            _tolerances = tolerances;
            _line = new StraightLine(span);
        }

        /// <summary>After the last <see cref="Advance"/>: the stretch is a drift, and no hold.</summary>
        public bool Is { get; private set; }

        /// <summary>Channels that drift, a bit each; where <see cref="Is"/> is false the hold is one all the same, and says so of itself.</summary>
        public int Channels { get; private set; }

        /// <summary>
        /// The question: is the stretch, or the last ten seconds of it, one drift of the speed; of a pressure where no speed is known. A pressure
        /// that creeps while the engine stands at its speed is the truck's answer, and may be the fault that is looked for.
        /// </summary>
        public void Begin(int from, int end)
        {
            Is = false;
            Channels = 0;
            _end = end;
            _first = IntegerMath.Max(from, end - MostBins);
            _half = end - _first < ShortBins ? IntegerMath.Max(_first, end - (ShortBins / 2)) : (_first + end) / 2;
            _inHalf = false;
            _channel = Channel.Speed;
            _bySpeed = _line.Begin(Channel.Speed, _first, end);
            _footAllows = _bySpeed ? _span.Mean(Channel.Speed, _first, end) / (HasPressure(_first, end) ? LoadedSharePerSecond : FootSharePerSecond) : 0;
            if (!_bySpeed)
            {
                NextChannel();
            }
        }

        /// <summary>Looks at some of it; true once the answer is there.</summary>
        public bool Advance()
        {
            if (_channel == Channel.Count)
            {
                return true;
            }

            if (!_line.Advance())
            {
                return false;
            }

            if (!_inHalf && LeadsOn())
            {
                _inHalf = true;
                return false;
            }

            if (_inHalf)
            {
                Tell();
            }

            _inHalf = false;
            if (!Is)
            {
                NextChannel();
            }

            return Is || _channel == Channel.Count;
        }

        // The whole stretch rises or falls, and its later half can be looked at.
        private bool LeadsOn()
        {
            _wholeSlope = _line.Slope;
            _scatter = _tolerances.SampleScatter(_line.Scatter);
            long least = _tolerances.Settled(_channel, _tolerances.Level(_channel, _span.Mean(_channel, _first, _end)));
            return Size(_wholeSlope) > least && IsMore(_wholeSlope, WholeMayPerMille) && _line.Begin(_channel, _half, _end);
        }

        private void Tell()
        {
            bool goesOn = _wholeSlope > 0 == _line.Slope > 0;
            if (_end - _first < ShortBins || (goesOn && IsMore(_line.Slope, HalfMayPerMille)))
            {
                Channels |= 1 << _channel;
            }

            bool isSure = goesOn && IsMore(_line.Slope, HalfPerMille) && IsMore(_wholeSlope, WholePerMille);
            Is = isSure && (_channel == Channel.Speed ? Size(_wholeSlope) > _footAllows : !_bySpeed);
        }

        private bool IsMore(long slope, int perMille) => Size(slope) > _scatter * perMille / 1000;

        private void NextChannel()
        {
            do
            {
                _channel++;
            }
            while (_channel < Channel.Count && !_line.Begin(_channel, _first, _end));
        }

        private bool HasPressure(int begin, int end)
        {
            for (int channel = Channel.Main; channel < Channel.Count; channel++)
            {
                if (_span.Readings(channel, begin, end) * 2 >= end - begin)
                {
                    return true;
                }
            }

            return false;
        }

        private static long Size(long value) => value < 0 ? -value : value;
    }
}
