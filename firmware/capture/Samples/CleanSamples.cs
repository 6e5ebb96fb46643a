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
        private long _before;
        private long _earlier;
        private int _count;

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
            to[Channel.Speed] = _filters[Channel.Speed].Pass(from[Channel.Speed]);
            for (int channel = Channel.Main; channel < Channel.Count; channel++)
            {
                to[channel] = _filters[channel].Pass(_loops[channel].Pass(from[channel]));
            }

            if (_count < Delay)
            {
                _count++;
                return false;
            }

            return true;
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
