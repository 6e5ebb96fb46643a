using LoggerBox.Capture.Samples;
using LoggerBox.Capture.Session;

namespace LoggerBox.Capture
{
    /// <summary>
    /// What no reading waits for, as far as a set leaves time for it: to store a full block, to encode the next one, and what is due. Times are counted in
    /// instructions, of which a set is to take 6,000 at the most (`DEVELOPERS.md` says how they are measured).
    /// </summary>
    internal sealed class SpareTime
    {
        // A set that brings nothing leaves so much, and much more where sets come slowly: with fewer than four a bin there is time for everything.
        private const int SetTime = 4000;
        private const int SlowSetTime = 9000;
        private const int SetsABin = 4;

        // What has taken its part of it already: an edge of the pickup, a bin that was completed, or followed.
        private const int EdgeTime = 1900;
        private const int CompletedBinTime = 1100;
        private const int FollowedBinTime = 1900;

        // What is to be done takes: a part of a block that is stored, a value that is encoded, a part of what is due.
        private const int PartOfBlockTime = 1900;
        private const int ValueTime = 128;
        private const int PartTime = 1300;

        // Noise over the full scale takes a third more.
        private const int MostValues = 27;

        // To be had while a block is encoded: no predictors are tried then.
        private const int TrialTime = 450;

        /// <summary>Something may be due. Where nothing was, only a bin, a tag or a gap makes it so.</summary>
        public bool MayBeDue;

        private readonly SampleRecorder _recorder;
        private readonly DueWork _due;
        private readonly bool _isFast;
        private readonly bool _isReplay;

        public SpareTime(SampleRecorder recorder, DueWork due, uint intervalMicroseconds)
        {
            _recorder = recorder;
            _due = due;
            _isReplay = intervalMicroseconds == 0;
            _isFast = intervalMicroseconds > 0 && intervalMicroseconds * SetsABin <= Bin.Microseconds;
        }

        /// <summary>Does what there is to do, as much as this set leaves time for.</summary>
        public void Use(bool followedBin, bool completedBin, bool hasEdge, long now)
        {
            bool isStoring = _recorder.IsStoring;
            bool isEncoding = _recorder.IsEncoding;
            if (!MayBeDue && !isStoring && !isEncoding)
            {
                return;
            }

            int time = !_isFast ? SlowSetTime : Left(followedBin, completedBin, hasEdge);
            if (isStoring)
            {
                // Nothing else has to do with the log meanwhile.
                if (time >= PartOfBlockTime || _recorder.IsInHurry)
                {
                    _recorder.Advance();
                }

                return;
            }

            if (isEncoding)
            {
                time += TrialTime;
                int values = time / ValueTime;
                time -= _recorder.Encode(values < MostValues ? values : MostValues) * ValueTime;
            }

            // A recording that is played again keeps nobody waiting, however far apart its rows are.
            while (MayBeDue && (_isReplay || time >= PartTime))
            {
                MayBeDue = _due.Advance(now);
                time -= PartTime;
            }
        }

        private static int Left(bool followedBin, bool completedBin, bool hasEdge)
        {
            int time = followedBin ? SetTime - FollowedBinTime : completedBin ? SetTime - CompletedBinTime : SetTime;
            return hasEdge ? time - EdgeTime : time;
        }
    }
}
