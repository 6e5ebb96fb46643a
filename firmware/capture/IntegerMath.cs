namespace LoggerBox.Capture
{
    /// <summary>The few functions that the platform's core library has not.</summary>
    internal static class IntegerMath
    {
        public static int Abs(int value) => value < 0 ? -value : value;

        public static long Abs(long value) => value < 0 ? -value : value;

        public static int Min(int a, int b) => a < b ? a : b;

        public static int Max(int a, int b) => a > b ? a : b;

        public static int Clamp(long value, int low, int high) => value < low ? low : value > high ? high : (int)value;

        /// <summary>Quotient rounded to the nearest, halves away from zero. The divisor is positive.</summary>
        public static long DivideRounded(long value, long divisor) =>
            value >= 0 ? (value + (divisor / 2)) / divisor : -((-value + (divisor / 2)) / divisor);

        /// <summary>Largest integer whose square does not exceed the value; 0 for a negative one.</summary>
        public static long SquareRoot(long value)
        {
            if (value <= 0)
            {
                return 0;
            }

            long root = 0;
            long bit = 1L << 62;
            while (bit > value)
            {
                bit >>= 2;
            }

            while (bit != 0)
            {
                if (value >= root + bit)
                {
                    value -= root + bit;
                    root = (root >> 1) + bit;
                }
                else
                {
                    root >>= 1;
                }

                bit >>= 2;
            }

            return root;
        }
    }
}
