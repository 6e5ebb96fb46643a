using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.RunUps
{
    /// <summary>
    /// Times a burst of full pedal: from where the speed leaves its old level to where it first reaches 90 % of the new one.
    /// A weak engine takes longer, a slipping stator does not: no gauge tells these two apart. Some points at a time.
    /// </summary>
    public sealed class RunUpTimer
    {
        private const int LeftPercent = 5;
        private const int ReachedPercent = 90;

        // A quarter above the old speed: less is a foot that corrects, not a run-up.
        private const int RisePercent = 25;
        private const int PointsAtATime = 32;

        private readonly FineTrace _speed;
        private int _next;
        private int _leftLevel;
        private int _reachedLevel;
        private long _left;

        public RunUpTimer(FineTrace speed)
        {
            _speed = speed;
        }

        public readonly RunUpRecord Timed = new RunUpRecord();

        /// <summary>Looks through the trace.</summary>
        public bool IsRunning { get; private set; }

        /// <summary>After the last <see cref="Advance"/>: there was a run-up, and the trace still held it.</summary>
        public bool IsTimed { get; private set; }

        /// <summary>The way to <paramref name="toTenths"/> is to be timed, if it can have been a run-up.</summary>
        public void Begin(long startMicroseconds, int fromTenths, int toTenths)
        {
            int rise = toTenths - fromTenths;
            IsTimed = false;
            IsRunning = fromTenths > 0 && rise * 100L >= (long)fromTenths * RisePercent;
            if (!IsRunning)
            {
                return;
            }

            _next = _speed.NumberAt(startMicroseconds - (3 * Bin.Microseconds));
            _left = -1;
            _leftLevel = fromTenths + (rise * LeftPercent / 100);
            _reachedLevel = (int)((long)toTenths * ReachedPercent / 100);
            Timed.FromTenths = fromTenths;
            Timed.ToTenths = toTenths;
        }

        /// <summary>Looks at some points; true when those were the last.</summary>
        public bool Advance()
        {
            int until = IntegerMath.Min(_next + PointsAtATime, _speed.End);
            int level = _left < 0 ? _leftLevel : _reachedLevel;
            int number = _next;
            while (number < until && _speed.Value(number) < level)
            {
                number++;
            }

            _next = number;
            if (number < until)
            {
                Cross(_speed.Crossing(number, level));
            }
            else
            {
                IsRunning = until < _speed.End;
            }

            return !IsRunning;
        }

        private void Cross(long moment)
        {
            if (_left < 0)
            {
                _left = moment;
                return;
            }

            IsRunning = false;
            IsTimed = moment > _left;
            Timed.StartMicroseconds = _left;
            Timed.Milliseconds = (int)((moment - _left) / 1000);
        }
    }
}
