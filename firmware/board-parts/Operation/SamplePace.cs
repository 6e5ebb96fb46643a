namespace LoggerBox.BoardParts.Operation
{
    /// <summary>
    /// When a sample set is due, and the time that it carries: even steps from the first, so that the loop's own jitter is no gap. Steps that
    /// went by without a poll are left out, and become a dropout in the record.
    /// </summary>
    public sealed class SamplePace
    {
        private readonly long _interval;
        private long _next = -1;

        public SamplePace(uint intervalMicroseconds)
        {
            _interval = intervalMicroseconds;
        }

        /// <summary>Time of the set that the last true <see cref="IsDue"/> announced.</summary>
        public long Microseconds { get; private set; }

        /// <summary>Time until the next set.</summary>
        public long Spare(long now) => _next < 0 ? 0 : _next - now;

        public bool IsDue(long now)
        {
            if (_next < 0)
            {
                _next = now;
            }

            if (now < _next)
            {
                return false;
            }

            Microseconds = _next + ((now - _next) / _interval * _interval);
            _next = Microseconds + _interval;
            return true;
        }
    }
}
