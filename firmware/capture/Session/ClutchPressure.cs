using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Session
{
    /// <summary>Whether a clutch holds pressure: measured against the main pressure of the same hold, both above their engine-off readings.</summary>
    public sealed class ClutchPressure
    {
        // A leaking clutch still shows a third of main at idle, an empty one the drag of the seals: a few per cent.
        private const int PressedPercentOfMain = 15;
        private const int PressedPascal = 60000;

        private readonly SessionHeader _header;
        private int _clutchZero;
        private int _mainZero;

        public ClutchPressure(SessionHeader header)
        {
            _header = header;
            _clutchZero = header.Pressures[Channel.Clutch - 1].ZeroCounts * 100;
            _mainZero = header.Pressures[Channel.Main - 1].ZeroCounts * 100;
        }

        /// <summary>A hold with the engine off.</summary>
        public void TakeZero(HoldRecord hold)
        {
            if (hold.Readings[Channel.Clutch].Present)
            {
                _clutchZero = hold.Readings[Channel.Clutch].SettledHundredths;
            }

            if (hold.Readings[Channel.Main].Present)
            {
                _mainZero = hold.Readings[Channel.Main].SettledHundredths;
            }
        }

        public bool IsPressed(HoldRecord hold)
        {
            if (!hold.Readings[Channel.Clutch].Present)
            {
                return false;
            }

            long clutch = Pascal(Channel.Clutch, hold.Readings[Channel.Clutch].SettledHundredths - _clutchZero);
            long main = hold.Readings[Channel.Main].Present
                ? Pascal(Channel.Main, hold.Readings[Channel.Main].SettledHundredths - _mainZero)
                : 0;
            return main > PressedPascal ? clutch * 100 > main * PressedPercentOfMain : clutch > PressedPascal;
        }

        private long Pascal(int channel, int hundredths)
        {
            ChannelCalibration calibration = _header.Pressures[channel - 1];
            int span = calibration.SpanCounts == 0 ? 1 : calibration.SpanCounts;
            return (long)hundredths * calibration.SpanPascal / (100L * span);
        }
    }
}
