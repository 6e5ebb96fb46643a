namespace LoggerBox.Protocol.Encoding
{
    /// <summary>
    /// Foretells a column's next value from those before it, in integers, the same way on both ends of the wire: a level that follows what it was off by
    /// a share, and goes on along a slope. One rule with three settings, so that what writes with every sample set needs no virtual calls.
    /// </summary>
    public sealed class Predictor
    {
        /// <summary>Fraction bits of a level: 1/64 of a count.</summary>
        internal const int FractionBits = 6;

        /// <summary>Half a count: added before a level is rounded down.</summary>
        internal const int Half = 1 << (FractionBits - 1);

        // Shares of what a level was off by, as shifts: 1/2^n of it.
        internal const int AverageShift = 4;
        internal const int TrendShift = 1;
        internal const int SlopeShift = 3;

        /// <summary>The level at which the next value should be.</summary>
        internal int Foretold;
        internal int Slope;

        /// <summary>By this the level follows now, and in the end.</summary>
        internal int Shift;
        internal readonly int LastShift;

        /// <summary>Values that it was made of since it began.</summary>
        internal int Age;

        /// <summary>The level goes on along a slope.</summary>
        internal readonly bool HasSlope;

        private readonly int firstShift;

        private Predictor(int firstShift, int lastShift, bool hasSlope)
        {
            this.firstShift = firstShift;
            LastShift = lastShift;
            HasSlope = hasSlope;
        }

        /// <summary>The value before. Best where readings swing faster than noise can be averaged away.</summary>
        public static Predictor Delta() => new Predictor(0, 0, hasSlope: false);

        /// <summary>
        /// A running mean that begins again after a jump. Best where readings stand still: white noise of a difference is 1.4 times that of
        /// a reading, of a reading less a mean of many hardly more than 1. A young mean trusts new values more: their weights are 1/2, 1/4, 1/8, then 1/16.
        /// </summary>
        public static Predictor Average() => new Predictor(1, AverageShift, hasSlope: false);

        /// <summary>Level and slope, both averaged. Best while speed and pressures run to a new level.</summary>
        public static Predictor Trend() => new Predictor(TrendShift, TrendShift, hasSlope: true);

        /// <summary>What the next value should be. May lie outside 16 bits: only the difference counts.</summary>
        public int Next => (Foretold + Half) >> FractionBits;

        /// <summary>Begins again where a value lies far outside the usual error.</summary>
        public bool Jumps => firstShift != LastShift;

        /// <summary>Takes the first value.</summary>
        public void Begin(int value)
        {
            Foretold = value << FractionBits;
            Slope = 0;
            Shift = firstShift;
            Age = 1;
        }

        /// <summary>Takes the value that came in place of <see cref="Next"/>; jumped: it lay far outside the usual error.</summary>
        public void Learn(int value, bool jumped)
        {
            if (jumped && Jumps)
            {
                Begin(value);
                return;
            }

            if (Shift != LastShift && ++Age == 2 << Shift)
            {
                Shift++;
            }

            int off = (value << FractionBits) - Foretold;
            Slope += HasSlope ? off >> SlopeShift : 0;
            Foretold += (off >> Shift) + Slope;
        }
    }
}
