namespace LoggerBox.BoardParts.Inputs
{
    /// <summary>The one button, worked with a glove: short when it is let go, long as soon as it was held long enough.</summary>
    public sealed class PushButton
    {
        public const long LongMicroseconds = 1500000;

        private const long SettleMicroseconds = 30000;

        private readonly Debounced _contact = new Debounced(SettleMicroseconds);
        private bool _wasLong;

        /// <summary>The press that this moment completes.</summary>
        public ButtonPress Update(bool pressed, long now)
        {
            bool changed = _contact.Update(pressed, now);
            if (_contact.IsOn)
            {
                _wasLong &= !changed;
                if (_wasLong || now - _contact.SinceMicroseconds < LongMicroseconds)
                {
                    return ButtonPress.None;
                }

                _wasLong = true;
                return ButtonPress.Long;
            }

            return changed && !_wasLong ? ButtonPress.Short : ButtonPress.None;
        }
    }

    public enum ButtonPress
    {
        None = 0,
        Short = 1,
        Long = 2,
    }
}
