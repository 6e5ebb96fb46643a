namespace LoggerBox.Protocol.Records
{
    /// <summary>
    /// All channels at one moment. One object is filled again and again: no allocation per sample.
    /// </summary>
    public sealed class SampleSet
    {
        /// <summary>A channel without a reading. Never a value that a sensor can give.</summary>
        public const int Missing = short.MinValue;

        /// <summary>Microseconds since boot (trace files: since the trace's zero).</summary>
        public long Microseconds;

        /// <summary>
        /// Indexed by <see cref="Channel"/>: speed in tenths of rpm (0 to 65534), then loop currents in counts (-32767 to 32767);
        /// <see cref="Missing"/> where there is none.
        /// </summary>
        public readonly int[] Values = new int[Channel.Count];

        /// <summary>
        /// Beside the speed and not stored with it: how far it may be off (95 %), and what of that no averaging takes away (one standard deviation),
        /// hundredths of its unit; 0 where a board cannot tell.
        /// </summary>
        public int SpeedUncertaintyHundredths;
        public int SpeedBiasHundredths;

        /// <summary>Something came from the pickup since the set before: to look at it took its time.</summary>
        public bool IsSpeedNew;

        /// <summary>The speed sooner and less exactly, for what must not wait; <see cref="Missing"/> where a board has no other than the speed.</summary>
        public int QuickSpeed = Missing;
    }
}
