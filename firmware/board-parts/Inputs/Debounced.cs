namespace LoggerBox.BoardParts.Inputs
{
    /// <summary>A contact, once it has stood still for a while.</summary>
    public sealed class Debounced
    {
        private readonly long _settleMicroseconds;
        private bool _seen;
        private long _since;

        public Debounced(long settleMicroseconds)
        {
            _settleMicroseconds = settleMicroseconds;
        }

        public bool IsOn { get; private set; }

        /// <summary>Since when the contact has been as it is.</summary>
        public long SinceMicroseconds { get; private set; }

        /// <summary>True when the contact has changed for good.</summary>
        public bool Update(bool on, long now)
        {
            if (on != _seen)
            {
                _seen = on;
                _since = now;
            }

            if (_seen == IsOn || now - _since < _settleMicroseconds)
            {
                return false;
            }

            IsOn = _seen;
            SinceMicroseconds = _since;
            return true;
        }
    }
}
