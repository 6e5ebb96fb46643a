using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>Mean of the quick readings since it was last taken: what a guard goes by that must not wait for the exact ones.</summary>
    internal sealed class QuickSpeed
    {
        private int sum;
        private int count;

        public void Add(int tenths)
        {
            if (tenths != SampleSet.Missing)
            {
                sum += tenths;
                count++;
            }
        }

        /// <param name="otherwise">Where no reading came.</param>
        public int Take(int otherwise)
        {
            int mean = count == 0 ? otherwise : sum / count;
            sum = 0;
            count = 0;
            return mean;
        }
    }
}
