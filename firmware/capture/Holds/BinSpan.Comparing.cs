namespace LoggerBox.Capture.Holds
{
    /// <summary>Two stretches of it against each other: with each bin for each channel.</summary>
    public sealed partial class BinSpan
    {
        private bool _comparedWhole;
        private int _comparedBins;
        private int _comparedFrom;
        private int _comparedTo;
        private int _comparedBins2;
        private int _comparedFrom2;
        private int _comparedTo2;

        /// <summary>Two stretches that <see cref="MeansAgree"/> is to compare, channel by channel; they may begin before the first bin, and say nothing then.</summary>
        public void HoldAgainst(int from, int to, int from2, int to2)
        {
            _comparedWhole = from >= 0 && _count - from <= _whole;
            _comparedBins = to - from;
            _comparedBins2 = to2 - from2;
            _comparedFrom = Place(from < 0 ? 0 : from);
            _comparedTo = Place(to < 0 ? 0 : to);
            _comparedFrom2 = Place(from2 < 0 ? 0 : from2);
            _comparedTo2 = Place(to2);
        }

        /// <summary>
        /// Both stretches have all their readings, and their means surely differ by no more than this: what mostly is so with each bin is told without a
        /// division. Rounding moves each mean by half a hundredth at most.
        /// </summary>
        public bool MeansAgree(int channel, long most)
        {
            int bins = _comparedBins;
            int bins2 = _comparedBins2;
            if (!_comparedWhole && !AreWhole(_counts[channel]))
            {
                return false;
            }

            long[] sums = _sums[channel];
            long apart = ((sums[_comparedTo2] - sums[_comparedFrom2]) * bins) - ((sums[_comparedTo] - sums[_comparedFrom]) * bins2);
            most = (most - 1) * bins * bins2;
            return apart <= most && apart >= -most;
        }

        private bool AreWhole(short[] counts) =>
            (short)(counts[_comparedTo] - counts[_comparedFrom]) == _comparedBins && (short)(counts[_comparedTo2] - counts[_comparedFrom2]) == _comparedBins2;
    }
}
