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

            // Newton's way down from a power of two above the root, which is never passed.
            int bits = value >= 1L << 32 ? 32 : 0;
            bits += value >> bits >= 1 << 16 ? 16 : 0;
            bits += value >> bits >= 1 << 8 ? 8 : 0;
            bits += value >> bits >= 1 << 4 ? 4 : 0;
            bits += value >> bits >= 1 << 2 ? 2 : 0;
            long root = 1L << ((bits >> 1) + 1);
            long next = (root + (value / root)) >> 1;
            while (next < root)
            {
                root = next;
                next = (root + (value / root)) >> 1;
            }

            return root;
        }
    }
}
