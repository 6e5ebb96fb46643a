using LoggerBox.Protocol.Rules;

namespace LoggerBox.Protocol.Records
{
    /// <summary>One filling of a clutch: gear change, fill plateau, rise, settled.</summary>
    public sealed class EngagementRecord : IRecord
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

        public RecordCode Code => RecordCode.Engagement;

        public void Write(ByteWriter writer)
        {
            writer.WriteInt64(StartMicroseconds);
            writer.WriteByte((byte)Gear);
            writer.WriteInt32(FillMilliseconds);
            writer.WriteInt32(RiseMilliseconds);
            writer.WriteInt32(TotalMilliseconds);
            writer.WriteInt32(OvershootPerMille);
            writer.WriteInt32(SettledHundredths);
            writer.WriteInt32(SpeedTenths);
            writer.WriteBoolean(StartFromPressure);
            writer.WriteBoolean(Disturbed);
            writer.WriteBoolean(NeverFilled);
        }

        public bool TryRead(ByteReader reader)
        {
            StartMicroseconds = reader.ReadInt64();
            Gear = WireCode.ReadGear(reader);
            FillMilliseconds = reader.ReadInt32();
            RiseMilliseconds = reader.ReadInt32();
            TotalMilliseconds = reader.ReadInt32();
            OvershootPerMille = reader.ReadInt32();
            SettledHundredths = reader.ReadInt32();
            SpeedTenths = reader.ReadInt32();
            StartFromPressure = reader.ReadBoolean();
            Disturbed = reader.ReadBoolean();
            NeverFilled = reader.ReadBoolean();
            return !reader.TooShort;
        }
    }
}
