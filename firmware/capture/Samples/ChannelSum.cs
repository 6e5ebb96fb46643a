namespace LoggerBox.Capture.Samples
{
    /// <summary>One channel's readings of a bin: how many, their sum, highest and lowest.</summary>
    internal sealed class ChannelSum
    {
        private int count;
        private int sum;
        private int highest;
        private int lowest;

        public void Add(int value)
        {
            count++;
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
        public void Complete(Bin bin, int channel)
        {
            // A tenth of a second of the fastest samples stays far below 2^31.
            bin.Means[channel] = count == 0 ? Bin.NoMean : (int)IntegerMath.DivideRounded(sum * 100L, count);
            bin.Highest[channel] = highest;
            bin.Lowest[channel] = lowest;
            Clear();
        }

        public void Clear()
        {
            count = 0;
            sum = 0;
            highest = int.MinValue;
            lowest = int.MaxValue;
        }
    }
}
