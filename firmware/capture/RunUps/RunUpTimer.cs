using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.RunUps
{
    /// <summary>
    /// Times a burst of full pedal: from where the speed leaves its old level to where it first reaches 90 % of the new one.
    /// A weak engine takes longer, a slipping stator does not: no gauge tells these two apart.
    /// </summary>
    public sealed class RunUpTimer
    {
        private const int LeftPercent = 5;
        private const int ReachedPercent = 90;

        // A quarter above the old speed: less is a foot that corrects, not a run-up.
        private const int RisePercent = 25;

        private readonly FineTrace _speed;

        public RunUpTimer(FineTrace speed)
        {
            _speed = speed;
        }

        public readonly RunUpRecord Timed = new RunUpRecord();

        /// <summary>True when the way to <paramref name="toTenths"/> was a run-up that the trace still holds.</summary>
        public bool Time(long startMicroseconds, int fromTenths, int toTenths)
        {
            int rise = toTenths - fromTenths;
            if (fromTenths <= 0 || rise * 100L < (long)fromTenths * RisePercent)
            {
                return false;
            }

            int at = _speed.IndexAt(startMicroseconds - (3 * Bin.Microseconds));
            long left = Crossing(ref at, fromTenths + (rise * LeftPercent / 100));
            long reached = Crossing(ref at, (int)((long)toTenths * ReachedPercent / 100));
            if (left < 0 || reached <= left)
            {
                return false;
            }

            Timed.StartMicroseconds = left;
            Timed.FromTenths = fromTenths;
            Timed.ToTenths = toTenths;
            Timed.Milliseconds = (int)((reached - left) / 1000);
            return true;
        }

        // Between two points the moment is interpolated, so that a coarse recording is not late by half a step.
        private long Crossing(ref int at, int level)
        {
            for (; at < _speed.Count; at++)
            {
                int here = _speed.Value(at);
                if (here < level)
                {
                    continue;
                }

                if (at == 0 || _speed.Value(at - 1) >= level)
                {
                    return _speed.Time(at);
                }

                int before = _speed.Value(at - 1);
                long step = _speed.Time(at) - _speed.Time(at - 1);
                return _speed.Time(at - 1) + (step * (level - before) / (here - before));
            }

            return -1;
        }
    }
}
