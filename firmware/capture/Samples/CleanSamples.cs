using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>
    /// The samples as the finders see them: two sets late, single wild readings and faulty loops left out. The log keeps them as they came.
    /// </summary>
    public sealed class CleanSamples
    {
        // The filter looks at two neighbours on each side.
        private const int Delay = 2;

        // 25 rpm: a cylinder that misfires is no wild reading.
        private const int SpeedFloorTenths = 250;
        private const int PressureFloorPascal = 15000;

        private readonly SpikeFilter[] _filters = new SpikeFilter[Channel.Count];
        private readonly LoopCheck[] _loops = new LoopCheck[Channel.Count];

        // The same one by one: they run with every set.
        private readonly SpikeFilter _speed;
        private readonly SpikeFilter _main;
        private readonly SpikeFilter _clutch;
        private readonly SpikeFilter _converter;
        private readonly LoopCheck _mainLoop;
        private readonly LoopCheck _clutchLoop;
        private readonly LoopCheck _converterLoop;
        private long _before;
        private long _earlier;
        private int _count;
        private int _learning;

        public CleanSamples(SessionHeader header)
        {
            _filters[Channel.Speed] = new SpikeFilter(SpeedFloorTenths);
            for (int channel = Channel.Main; channel < Channel.Count; channel++)
            {
                ChannelCalibration calibration = header.Pressures[channel - 1];
                long span = calibration.SpanPascal < 1 ? 1 : calibration.SpanPascal;
                _filters[channel] = new SpikeFilter(
                    IntegerMath.Clamp((long)PressureFloorPascal * calibration.SpanCounts / span, 3, short.MaxValue));
                _loops[channel] = new LoopCheck(calibration);
            }

            _speed = _filters[Channel.Speed];
            _main = _filters[Channel.Main];
            _clutch = _filters[Channel.Clutch];
            _converter = _filters[Channel.Converter];
            _mainLoop = _loops[Channel.Main];
            _clutchLoop = _loops[Channel.Clutch];
            _converterLoop = _loops[Channel.Converter];
        }

        /// <summary>The set that the last true <see cref="Add"/> gave.</summary>
        public readonly SampleSet Latest = new SampleSet();

        public LoopState Loop(int channel) => _loops[channel].State;

        public bool Add(SampleSet sample)
        {
            Latest.Microseconds = _earlier;
            _earlier = _before;
            _before = sample.Microseconds;
            int[] from = sample.Values;
            int[] to = Latest.Values;
            to[Channel.Speed] = _speed.Pass(from[Channel.Speed]);
            to[Channel.Main] = _main.Pass(_mainLoop.Pass(from[Channel.Main]));
            to[Channel.Clutch] = _clutch.Pass(_clutchLoop.Pass(from[Channel.Clutch]));
            to[Channel.Converter] = _converter.Pass(_converterLoop.Pass(from[Channel.Converter]));
            if (_count < Delay)
            {
                _count++;
                return false;
            }

            return true;
        }

        /// <summary>One channel after the other learns how noisy it is; to be called once a bin.</summary>
        public void Learn()
        {
            _filters[_learning].Learn();
            _learning = (_learning + 1) & (Channel.Count - 1);
        }

        public void Clear()
        {
            _count = 0;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                _filters[channel].Clear();
            }
        }
    }
}
