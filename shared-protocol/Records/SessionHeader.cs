namespace LoggerBox.Protocol.Records
{
    /// <summary>The first record of a session: who recorded, when, how fast, and what a count is worth.</summary>
    public sealed class SessionHeader
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
    }
}
