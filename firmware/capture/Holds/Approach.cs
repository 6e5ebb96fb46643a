using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Holds
{
    /// <summary>Looks back from the beginning of a hold: when the speed arrived, from where, and how long the way was.</summary>
    public sealed class Approach
    {
        // 8 rpm in a tenth of a second: slower than that the speed stood.
        private const int StillHundredths = 8000;

        private readonly RecentBins _bins;

        public Approach(RecentBins bins)
        {
            _bins = bins;
        }

        /// <summary>Age of the bin in which the speed arrived.</summary>
        public int ArrivalAge { get; private set; }

        public int FromTenths { get; private set; }

        public int Milliseconds { get; private set; }

        /// <param name="openAge">Age of the hold's first bin.</param>
        /// <param name="oldestAge">Nothing is looked at before this: an earlier hold ended there.</param>
        public void Find(int openAge, int oldestAge)
        {
            int level = _bins.Mean(openAge, Channel.Speed);
            ArrivalAge = openAge;
            FromTenths = level == Bin.NoMean ? 0 : level / 100;
            Milliseconds = 0;
            if (level == Bin.NoMean)
            {
                return;
            }

            int last = IntegerMath.Min(oldestAge, _bins.Count - 1);
            while (ArrivalAge < last && Near(level, _bins.Mean(ArrivalAge + 1, Channel.Speed)))
            {
                ArrivalAge++;
            }

            int age = ArrivalAge;
            int here = _bins.Mean(age, Channel.Speed);
            while (age < last)
            {
                int before = _bins.Mean(age + 1, Channel.Speed);
                if (before == Bin.NoMean || (age > ArrivalAge && !GoesOn(level, here, before)))
                {
                    break;
                }

                age++;
                here = before;
            }

            if (age > ArrivalAge)
            {
                FromTenths = here / 100;
                Milliseconds = (int)((_bins.Start(ArrivalAge) - _bins.Start(age)) / 1000);
            }
        }

        // Within an eighth: takes in the overshoot, leaves out the ramp.
        private static bool Near(int level, int speed) => speed != Bin.NoMean && IntegerMath.Abs(speed - level) <= (level / 8) + StillHundredths;

        private static bool GoesOn(int level, int here, int before) => level > here
            ? here - before > StillHundredths
            : before - here > StillHundredths;
    }
}
