namespace LoggerBox.Protocol.Encoding
{
    /// <summary>
    /// A running mean that begins again after a jump. Best where readings stand still: white noise of a difference is 1.4 times that of
    /// a reading, of a reading less a mean of many hardly more than 1.
    /// </summary>
    public sealed class AveragePredictor : Predictor
    {
        // Weights 1/2, 1/4, 1/8, then 1/16 of each new value: a young mean trusts new values more.
        internal const int LastShift = 4;

        private int level;
        private int taken;
        private int shift;

        public override void Begin(int value)
        {
            level = value << FractionBits;
            taken = 1;
            shift = 1;
            Next = value;
        }

        public override void Learn(int value, bool jumped)
        {
            if (jumped)
            {
                Begin(value);
                return;
            }

            if (shift < LastShift && ++taken == 2 << shift)
            {
                shift++;
            }

            level += ((value << FractionBits) - level) >> shift;
            Next = (level + Half) >> FractionBits;
        }
    }
}
