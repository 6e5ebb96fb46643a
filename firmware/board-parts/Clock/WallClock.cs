namespace LoggerBox.BoardParts.Clock
{
    /// <summary>Time of day by the logger's own microseconds, from the last time that somebody knew it.</summary>
    public sealed class WallClock
    {
        private uint _utcSeconds;
        private long _setAt;

        public bool IsSet => _utcSeconds != 0;

        /// <summary>0 takes the time away.</summary>
        public void Set(uint utcSeconds, long now)
        {
            _utcSeconds = utcSeconds;
            _setAt = now;
        }

        /// <summary>Seconds since 1970 UTC; 0 where nobody knows.</summary>
        public uint UtcSeconds(long now) => _utcSeconds == 0 ? 0 : _utcSeconds + (uint)((now - _setAt) / 1000000);
    }
}
