using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>
    /// What counts as standing still, per channel. A share of the level serves large readings, a floor small ones; the scatter seen
    /// widens both, because a hunting governor or a chattering valve stands still about its mean.
    /// </summary>
    public sealed class Tolerances
    {
        // 12 rpm: an engine idles within less over a second, and the work hydraulics take more off the governed speed.
        private const int SpeedFloorTenths = 120;

        // 6 kPa, about 1 psi: below the noise of a 0.25 % transducer of 35 bar.
        private const int PressureFloorPascal = 6000;

        private const int SettledSpeedTenths = 15;

        private readonly int[] _floorHundredths = new int[Channel.Count];
        private readonly int _sampleScatterPerMille;
        private readonly int[] _zeroHundredths = new int[Channel.Count];

        public Tolerances(SessionHeader header)
        {
            // More than five samples in a tenth of a second are no longer independent: sensor and engine are slower.
            int samples = IntegerMath.Clamp(Bin.Microseconds / (header.SampleIntervalMicroseconds < 1 ? 1 : header.SampleIntervalMicroseconds), 1, 5);
            _sampleScatterPerMille = (int)IntegerMath.SquareRoot(samples * 1000000L);
            _floorHundredths[Channel.Speed] = SpeedFloorTenths * 100;
            for (int channel = Channel.Main; channel < Channel.Count; channel++)
            {
                ChannelCalibration calibration = header.Pressures[channel - 1];
                long span = calibration.SpanPascal < 1 ? 1 : calibration.SpanPascal;
                _floorHundredths[channel] = IntegerMath.Clamp((long)PressureFloorPascal * calibration.SpanCounts * 100 / span, 200, 1000000);
                _zeroHundredths[channel] = calibration.ZeroCounts * 100;
            }
        }

        /// <summary>The reading above the channel's own zero: 4 mA of a loop is no pressure.</summary>
        public long Level(int channel, long mean) => mean - _zeroHundredths[channel];

        /// <summary>Difference between the ends of a window that is still steady; hundredths, as all here.</summary>
        public long Drift(int channel, long level, long scatter) => channel == Channel.Speed
            ? Largest(_floorHundredths[channel], level / 125, scatter * 3 / 4)
            : Largest(_floorHundredths[channel], level / 40, scatter);

        /// <summary>Scatter beyond which a channel is in motion, not unsteady.</summary>
        public long Scatter(int channel, long level) => channel == Channel.Speed
            ? Largest(2L * _floorHundredths[channel], level / 60, 0)
            : Largest(3L * _floorHundredths[channel], level / 6, 0);

        /// <summary>Step between the latest bins and those before that ends a hold.</summary>
        public long Left(int channel, long level, long scatter) => channel == Channel.Speed
            ? Largest(_floorHundredths[channel], level / 200, scatter * 5)
            : Largest(2L * _floorHundredths[channel], level / 25, scatter * 4);

        /// <summary>Difference within the settled part that is none however little noise there is: 1.5 rpm and 0.75 kPa, or an eight hundredth of the speed.</summary>
        public long Settled(int channel, long level) => channel == Channel.Speed
            ? Largest(SettledSpeedTenths * 100, level / 1600, 0)
            : Largest(_floorHundredths[channel] / 8, level / 1600, 0);

        /// <summary>Difference within the settled part that matters to nobody who reads a gauge.</summary>
        public long Matters(int channel, long level) => channel == Channel.Speed
            ? Largest(400, level / 400, 0)
            : Largest(_floorHundredths[channel] / 4, level / 400, 0);

        /// <summary>Scatter of single samples, from that of bins whose samples are independent.</summary>
        public long SampleScatter(long binScatter) => binScatter * _sampleScatterPerMille / 1000;

        private static long Largest(long a, long b, long c)
        {
            long largest = a > b ? a : b;
            return largest > c ? largest : c;
        }
    }
}
