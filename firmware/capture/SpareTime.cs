using LoggerBox.Capture.Samples;
using LoggerBox.Capture.Session;
using LoggerBox.Capture.Storage;

namespace LoggerBox.Capture
{
    /// <summary>
    /// What no reading waits for, as far as a set leaves time for it: to store a full block, to encode the next one, and what is due. Times are counted in
    /// instructions, of which a set is to take 6,000 at the most (`DEVELOPERS.md` says how they are measured).
    /// </summary>
    internal sealed class SpareTime
    {
        /// <summary>
        /// What takes its part of a set before: an edge of the pickup, a bin that is completed, one that is taken, and looked at beside a hold or for one; an
        /// event's record.
        /// </summary>
        public const int OfEdge = 2100;
        public const int OfCompletedBin = 1400;
        public const int OfTakenBin = 650;
        public const int OfLook = 500;
        public const int OfLookAtChannel = 650;
        public const int OfTurn = 2800;
        public const int OfEvent = 1300;
        private const int OfTrial = 750;

        /// <summary>A set that brings nothing leaves so much.</summary>
        public const int SetTime = 4000;

        /// <summary>Where tags change or time is missing, there is enough to do.</summary>
        public const int OfAll = SetTime;

        // Much more where sets come slowly: with fewer than four a bin there is time for everything.
        private const int SlowSetTime = 9000;
        private const int SetsABin = 4;

        // A value that is encoded.
        private const int ValueTime = 147;

        // Fewer values than this takes are not worth their beginning.
        private const int FewestTime = 8 * ValueTime;

        // Noise over the full scale takes a third more.
        private const int MostValues = 26;

        // A block takes so much to be encoded and stored. Where there will not be time for that it is begun earlier, but not with fewer sets than these.
        private const int BlockTime = 300000;
        private const int UrgentTime = 130000;
        private const int FewestTried = 32;
        private const int EdgesShift = 2;

        // A set that leaves less is not made to take a part of a block that must be stored, as long as others will be.
        private const int LittleTime = 1200;
        private const int Margin = 3;

        // What is due goes first with every so many sets while a block is urgent; where sets have much to do, it is put off so often, and no more.
        private const int MostWaits = 2;
        private const int MostSetsWaited = 20;

        /// <summary>Something may be due. Where nothing was, only a bin, a tag or a gap makes it so.</summary>
        public bool MayBeDue;

        /// <summary>Edges of the pickup since the last <see cref="LookAhead"/>.</summary>
        public int EdgesOfBin;

        /// <summary>Sets come so fast that each has but a little time.</summary>
        public readonly bool IsFast;

        private readonly SampleRecorder _recorder;
        private readonly DueWork _due;
        private readonly bool _isReplay;

        // What bins leave of a set in the mean, and what an edge takes of it.
        private readonly int _timeLeft;
        private readonly int _timeOfEdge;
        private int _waited;

        // The newest block must be encoded with every other set at least.
        private bool _isUrgent;

        // Edges lately, of as many sets as a bin has, times the smoothing.
        private int _edges;

        public SpareTime(SampleRecorder recorder, DueWork due, uint intervalMicroseconds)
        {
            _recorder = recorder;
            _due = due;
            _isReplay = intervalMicroseconds == 0;
            IsFast = intervalMicroseconds > 0 && intervalMicroseconds * SetsABin <= Bin.Microseconds;
            if (IsFast)
            {
                int setsABin = (int)(Bin.Microseconds / intervalMicroseconds);
                _timeLeft = SetTime - ((OfCompletedBin + OfTakenBin + OfLook + OfLookAtChannel) / setsABin);
                _timeOfEdge = (OfEdge / setsABin) >> EdgesShift;
            }
        }

        /// <summary>Does what there is to do, as much as this set leaves time for.</summary>
        /// <param name="spent">What the set has taken of it already.</param>
        public void Use(int spent, long now)
        {
            bool isStoring = _recorder.IsStoring;
            bool isEncoding = _recorder.IsEncoding;
            if (!MayBeDue && !isStoring && !isEncoding)
            {
                return;
            }

            int time = IsFast ? SetTime - spent : SlowSetTime;
            if (isStoring)
            {
                // Nothing else has to do with the log meanwhile.
                Store(_recorder.HasTried ? time - OfTrial : time);
                return;
            }

            // What has waited goes before what is encoded, which has more sets to go.
            if (MayBeDue && (!isEncoding || !_isUrgent || _waited >= MostWaits))
            {
                time -= AdvanceDue(time, now);
            }

            if (isEncoding)
            {
                if (time >= FewestTime)
                {
                    int values = time / ValueTime;
                    time -= _recorder.Encode(values < MostValues ? values : MostValues) * ValueTime;
                }

                if (MayBeDue && time >= DueWork.LongestPart)
                {
                    AdvanceDue(time, now);
                }
            }

            if (MayBeDue)
            {
                _waited++;
            }
        }

        /// <summary>Somebody waits for what is due: it goes before what is encoded with the next set.</summary>
        public void Hurry() => _waited = MostWaits;

        /// <summary>Looks ahead whether there will be time to encode the newest block; to be called once a bin.</summary>
        public void LookAhead()
        {
            _edges += EdgesOfBin - (_edges >> EdgesShift);
            EdgesOfBin = 0;
            int left = _recorder.SetsLeft * (_timeLeft - (_edges * _timeOfEdge));
            _isUrgent = left < UrgentTime;
            if (IsFast && left < BlockTime && _recorder.Count >= FewestTried)
            {
                _recorder.BeginEncoding();
            }
        }

        // As many parts as there is time for, and one where none can wait.
        private void Store(int time)
        {
            int next = _recorder.NextPart;
            bool isForced = time < next && _recorder.IsInHurry(time < LittleTime ? 0 : Margin);
            while (isForced || time >= next)
            {
                isForced = false;
                time -= next;
                _recorder.Advance();
                if (next == RecordLog.OfStoring)
                {
                    return;
                }

                next = _recorder.NextPart;
            }

            if (MayBeDue && time >= DueWork.ShortPart)
            {
                _due.Measure();
            }
        }

        // A recording that is played again keeps nobody waiting, however far apart its rows are. Returns what it took.
        private int AdvanceDue(int time, long now)
        {
            time -= _recorder.HasTried ? OfTrial : 0;
            int left = time;
            bool isLate = _waited > MostSetsWaited;
            int needed = _due.NextPart;
            while (MayBeDue && (_isReplay || isLate || left >= needed))
            {
                needed = DueWork.LongestPart;
                int taken = _due.Advance(now);
                MayBeDue = taken > 0;
                left -= taken;
                _waited = 0;
                isLate = false;
            }

            return time - left;
        }
    }
}
