namespace LoggerBox.Protocol.Records
{
    /// <summary>One channel over one hold. Unit: the channel's (tenths of rpm, counts), where named in hundredths or thousandths of it.</summary>
    public sealed class HoldReading
    {
        public bool Present;

        /// <summary>Mean of the settled part.</summary>
        public int SettledHundredths;

        /// <summary>Highest and lowest from the approach to the end of the hold, single wild samples left out.</summary>
        public int Peak;
        public int Lowest;

        /// <summary>Scatter of the samples about the mean.</summary>
        public int DeviationHundredths;

        /// <summary>Standard error of the mean, correlation of the noise allowed for, and its degrees of freedom.</summary>
        public int StandardErrorThousandths;
        public int DegreesOfFreedom;

        /// <summary>Slope over the settled part, hundredths a second.</summary>
        public int SlopeHundredthsPerSecond;

        public void Clear()
        {
            Present = false;
            SettledHundredths = Peak = Lowest = DeviationHundredths = 0;
            StandardErrorThousandths = DegreesOfFreedom = SlopeHundredthsPerSecond = 0;
        }

        public void CopyFrom(HoldReading other)
        {
            Present = other.Present;
            SettledHundredths = other.SettledHundredths;
            Peak = other.Peak;
            Lowest = other.Lowest;
            DeviationHundredths = other.DeviationHundredths;
            StandardErrorThousandths = other.StandardErrorThousandths;
            DegreesOfFreedom = other.DegreesOfFreedom;
            SlopeHundredthsPerSecond = other.SlopeHundredthsPerSecond;
        }

        public void Write(ByteWriter writer)
        {
            writer.WriteBoolean(Present);
            writer.WriteInt32(SettledHundredths);
            writer.WriteInt32(Peak);
            writer.WriteInt32(Lowest);
            writer.WriteInt32(DeviationHundredths);
            writer.WriteInt32(StandardErrorThousandths);
            writer.WriteInt32(DegreesOfFreedom);
            writer.WriteInt32(SlopeHundredthsPerSecond);
        }

        public bool TryRead(ByteReader reader)
        {
            Present = reader.ReadBoolean();
            SettledHundredths = reader.ReadInt32();
            Peak = reader.ReadInt32();
            Lowest = reader.ReadInt32();
            DeviationHundredths = reader.ReadInt32();
            StandardErrorThousandths = reader.ReadInt32();
            DegreesOfFreedom = reader.ReadInt32();
            SlopeHundredthsPerSecond = reader.ReadInt32();
            return !reader.TooShort;
        }
    }
}
