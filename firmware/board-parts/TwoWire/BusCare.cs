namespace LoggerBox.BoardParts.TwoWire
{
    /// <summary>
    /// Keeps a stuck bus from stopping the logger: on the platform one transfer on it holds every thread for a second. It is recovered at
    /// once, and left alone for longer each time that this did not help.
    /// </summary>
    public sealed class BusCare
    {
        private const long FirstWaitMicroseconds = 500000;
        private const long LongestWaitMicroseconds = 8000000;

        private readonly ITwoWire _bus;
        private long _useFrom = long.MinValue;
        private long _wait = FirstWaitMicroseconds;

        public BusCare(ITwoWire bus)
        {
            _bus = bus;
        }

        /// <summary>The last transfer failed on the bus itself.</summary>
        public bool IsStuck { get; private set; }

        public int Failures { get; private set; }

        public int Recoveries { get; private set; }

        public bool MayUse(long now) => now >= _useFrom;

        public void Report(TwoWireResult result, long now)
        {
            if (result != TwoWireResult.BusFailed)
            {
                IsStuck = false;
                _wait = FirstWaitMicroseconds;
                return;
            }

            Failures++;
            IsStuck = true;
            _useFrom = now + _wait;
            _wait = _wait * 2 > LongestWaitMicroseconds ? LongestWaitMicroseconds : _wait * 2;
            _bus.Recover();
            Recoveries++;
        }
    }
}
