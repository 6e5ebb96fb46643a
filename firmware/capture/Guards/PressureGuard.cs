using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Guards
{
    /// <summary>
    /// Line pressure while the engine runs: too low to stall on (slipping plates burn in seconds), or so far above its maximum that the
    /// regulator must be stuck. Without limits in the plan it has nothing to say.
    /// </summary>
    public sealed class PressureGuard
    {
        // Slower than any idle: the engine is being cranked, or stops.
        private const int TurningTenths = 4000;

        // Pressure is there within a second of the start; two are patience enough.
        private const int BinsUntilLow = 20;
        private const int BinsUntilHigh = 10;
        private const long AgainMicroseconds = 30000000;
        private const int FarAbovePercent = 125;

        private readonly ChannelCalibration _main;
        private readonly int _lowPascal;
        private readonly long _highPascal;
        private int _low;
        private int _high;
        private long _said = -AgainMicroseconds;

        public PressureGuard(PlanRecord plan, SessionHeader header)
        {
            _main = header.Pressures[Channel.Main - 1];
            _lowPascal = plan.MainIdleMinPascal;
            _highPascal = (long)plan.MainHoldMaxPascal * FarAbovePercent / 100;
        }

        /// <summary>Looks at a tenth of a second; the cue that is due, the same one at most every half minute.</summary>
        public Cue Watch(Bin bin)
        {
            int speed = bin.Means[Channel.Speed];
            bool turns = speed != Bin.NoMean && speed / 100 > TurningTenths && bin.Means[Channel.Main] != Bin.NoMean && _main.Kind != ChannelKind.None;
            int pascal = turns ? _main.PascalFromCounts(bin.Means[Channel.Main] / 100) : 0;
            _low = turns && _lowPascal > 0 && pascal < _lowPascal ? _low + 1 : 0;
            _high = turns && _highPascal > 0 && pascal > _highPascal ? _high + 1 : 0;
            Cue due = _high >= BinsUntilHigh ? Cue.MainFarTooHigh : _low >= BinsUntilLow ? Cue.PressureTooLowToStall : Cue.None;
            if (due == Cue.None || bin.StartMicroseconds - _said < AgainMicroseconds)
            {
                return Cue.None;
            }

            _said = bin.StartMicroseconds;
            return due;
        }
    }
}
