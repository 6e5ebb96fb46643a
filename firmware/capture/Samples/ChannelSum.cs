using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>One channel's readings of a bin: how many of its sets had none, their sum, highest and lowest.</summary>
    internal sealed class ChannelSum
    {
        private int holes;
        private int sum;
        private int highest;
        private int lowest;

        public void Add(int value)
        {
            if (value == SampleSet.Missing)
            {
                holes++;
                return;
            }

            sum += value;
            if (value > highest)
            {
                highest = value;
            }

            if (value < lowest)
            {
                lowest = value;
            }
        }

        /// <summary>Gives mean and extremes to a bin, and is empty.</summary>
        /// <param name="sets">So many were added.</param>
        public void Complete(Bin bin, int channel, int sets)
        {
            int count = sets - holes;

            // A tenth of a second of the fastest samples stays far below 2^31.
            bin.Means[channel] = count == 0 ? Bin.NoMean : (int)IntegerMath.DivideRounded(sum * 100L, count);
            bin.Highest[channel] = highest;
            bin.Lowest[channel] = lowest;
            Clear();
        }

        public void Clear()
        {
            holes = 0;
            sum = 0;
            highest = int.MinValue;
            lowest = int.MaxValue;
        }
    }
}
