using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>A tenth of a second of clean readings: what holds are found on, at whatever rate the samples come.</summary>
    public sealed class Bin
    {
        public const int Microseconds = 100000;

        public long StartMicroseconds;

        /// <summary>Hundredths of the channel's unit, or <see cref="int.MinValue"/> where the channel had no reading.</summary>
        public readonly int[] Means = new int[Channel.Count];

        /// <summary>Extremes in the channel's unit; meaningless where the mean is missing.</summary>
        public readonly int[] Highest = new int[Channel.Count];
        public readonly int[] Lowest = new int[Channel.Count];

        public const int NoMean = int.MinValue;
    }
}
