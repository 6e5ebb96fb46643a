using LoggerBox.Protocol.Rules;

namespace LoggerBox.Protocol.Records
{
    /// <summary>One filling of a clutch: gear change, fill plateau, rise, settled.</summary>
    public sealed class EngagementRecord
    {
        public long StartMicroseconds;
        public Gear Gear;
        public int FillMilliseconds;
        public int RiseMilliseconds;
        public int TotalMilliseconds;
        public int OvershootPerMille;

        /// <summary>Clutch pressure that it settled at, hundredths of a count.</summary>
        public int SettledHundredths;

        /// <summary>Engine speed at the start, tenths of rpm.</summary>
        public int SpeedTenths;

        /// <summary>The tag was late or missing: the start is the first rise of clutch pressure.</summary>
        public bool StartFromPressure;

        /// <summary>Speed or pedal moved while the clutch filled, or a direction was left directly: not fit to judge.</summary>
        public bool Disturbed;

        /// <summary>Clutch pressure never came: the gear was tagged, the clutch stayed empty.</summary>
        public bool NeverFilled;
    }
}
