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

        private readonly int[] _floorHundredths = new int[Channel.Count];
        private readonly int[] _zeroHundredths = new int[Channel.Count];

        public Tolerances(SessionHeader header)
        {
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
            ? Largest(_floorHundredths[channel], level / 200, scatter * 5 / 2)
            : Largest(2L * _floorHundredths[channel], level / 25, scatter * 3);

        /// <summary>Difference between the ends of the settled part that counts as none.</summary>
        public long Settled(int channel, long level) => channel == Channel.Speed
            ? Largest(400, level / 400, 0)
            : Largest(_floorHundredths[channel] / 4, level / 400, 0);

        private static long Largest(long a, long b, long c)
        {
            long largest = a > b ? a : b;
            return largest > c ? largest : c;
        }
    }
}
