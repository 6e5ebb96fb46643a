using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>Looks back from the beginning of a hold, some bins at a time: when the speed arrived, from where, and how long the way was.</summary>
    public sealed class Approach
    {
        // 8 rpm in a tenth of a second: slower than that the speed stood.
        private const int StillHundredths = 8000;
        private const int BinsAtATime = 24;

        private readonly RecentBins _bins;
        private int _level;
        private int _oldest;
        private int _left;
        private bool _hasArrived;

        public Approach(RecentBins bins)
        {
            _bins = bins;
        }

        /// <summary>The way is not known yet.</summary>
        public bool IsRunning { get; private set; }

        /// <summary>Number of the bin in which the speed arrived.</summary>
        public int Arrival { get; private set; }

        public int FromTenths { get; private set; }

        public int Milliseconds { get; private set; }

        public long StartMicroseconds => _bins.Start(Arrival) - (Milliseconds * 1000L);

        /// <param name="open">Number of the hold's first bin.</param>
        /// <param name="oldest">Nothing is looked at before this: an earlier hold ended there.</param>
        public void Begin(int open, int oldest)
        {
            _level = _bins.Mean(open, Channel.Speed);
            _oldest = IntegerMath.Max(oldest, _bins.Oldest);
            Arrival = open;
            FromTenths = _level == Bin.NoMean ? 0 : _level / 100;
            Milliseconds = 0;
            _hasArrived = false;
            IsRunning = _level != Bin.NoMean;
        }

        /// <summary>Looks at some bins; true when those were the last.</summary>
        public bool Advance()
        {
            if (!_hasArrived)
            {
                SeekArrival();
            }
            else
            {
                SeekStart();
            }

            return !IsRunning;
        }

        private void SeekArrival()
        {
            int arrival = Arrival;
            int until = IntegerMath.Max(_oldest, arrival - BinsAtATime);
            while (arrival > until && Near(_level, _bins.Mean(arrival - 1, Channel.Speed)))
            {
                arrival--;
            }

            Arrival = arrival;
            _left = arrival;
            _hasArrived = arrival > until || arrival == _oldest;
        }

        private void SeekStart()
        {
            int number = _left;
            int until = IntegerMath.Max(_oldest, number - BinsAtATime);
            int here = _bins.Mean(number, Channel.Speed);
            bool goesOn = true;
            while (goesOn && number > until)
            {
                int before = _bins.Mean(number - 1, Channel.Speed);
                goesOn = before != Bin.NoMean && (number == Arrival || GoesOn(_level, here, before));
                number -= goesOn ? 1 : 0;
                here = before;
            }

            _left = number;
            IsRunning = goesOn && number > _oldest;
            if (!IsRunning && number < Arrival)
            {
                FromTenths = _bins.Mean(number, Channel.Speed) / 100;
                Milliseconds = (int)((_bins.Start(Arrival) - _bins.Start(number)) / 1000);
            }
        }

        // Within an eighth: takes in the overshoot, leaves out the ramp.
        private static bool Near(int level, int speed) => speed != Bin.NoMean && IntegerMath.Abs(speed - level) <= (level / 8) + StillHundredths;

        private static bool GoesOn(int level, int here, int before) => level > here
            ? here - before > StillHundredths
            : before - here > StillHundredths;
    }
}
