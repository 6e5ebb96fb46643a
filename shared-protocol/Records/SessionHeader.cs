namespace LoggerBox.Protocol.Records
{
    /// <summary>The first record of a session: who recorded, when, how fast, and what a count is worth.</summary>
    public sealed class SessionHeader : IRecord
    {
        public uint LoggerId;
        public ushort BootCount;
        public uint SessionNumber;
        public long StartMicroseconds;

        /// <summary>Seconds since 1970 UTC at <see cref="StartMicroseconds"/>; 0 where the logger had no valid clock.</summary>
        public uint StartUtcSeconds;

        /// <summary>Nominal time between sample sets; 0 where they come unevenly (a recording of another instrument).</summary>
        public uint SampleIntervalMicroseconds;

        /// <summary>Pickup pulses per revolution as a rational number: a four-stroke plug lead gives 1 / 2.</summary>
        public ushort PickupPulses = 1;
        public ushort PickupRevolutions = 1;

        /// <summary>Main, clutch, converter: index <see cref="Channel"/> - 1.</summary>
        public readonly ChannelCalibration[] Pressures = { new ChannelCalibration(), new ChannelCalibration(), new ChannelCalibration() };

        public bool HasGearInput;
        public string PlanName = "";

        public RecordCode Code => RecordCode.SessionHeader;

        public void Write(ByteWriter writer)
        {
            writer.WriteUInt32(LoggerId);
            writer.WriteUInt16(BootCount);
            writer.WriteUInt32(SessionNumber);
            writer.WriteInt64(StartMicroseconds);
            writer.WriteUInt32(StartUtcSeconds);
            writer.WriteUInt32(SampleIntervalMicroseconds);
            writer.WriteUInt16(PickupPulses);
            writer.WriteUInt16(PickupRevolutions);

            for (int i = 0; i < Pressures.Length; i++)
            {
                Pressures[i].Write(writer);
            }

            writer.WriteBoolean(HasGearInput);
            writer.WriteText(PlanName, RecordFormat.TextWidth);
        }

        public bool TryRead(ByteReader reader)
        {
            LoggerId = reader.ReadUInt32();
            BootCount = reader.ReadUInt16();
            SessionNumber = reader.ReadUInt32();
            StartMicroseconds = reader.ReadInt64();
            StartUtcSeconds = reader.ReadUInt32();
            SampleIntervalMicroseconds = reader.ReadUInt32();
            PickupPulses = reader.ReadUInt16();
            PickupRevolutions = reader.ReadUInt16();
            bool sound = PickupPulses != 0 && PickupRevolutions != 0;
            for (int i = 0; i < Pressures.Length; i++)
            {
                sound &= Pressures[i].TryRead(reader);
            }

            HasGearInput = reader.ReadBoolean();
            PlanName = reader.ReadText(RecordFormat.TextWidth);
            return sound && !reader.TooShort;
        }
    }
}
