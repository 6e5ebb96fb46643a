namespace LoggerBox.Protocol.Encoding
{
    /// <summary>Foretells a column's next value from those before it, in integers, the same way on both ends of the wire.</summary>
    public abstract class Predictor
    {
        /// <summary>What the next value should be. May lie outside 16 bits: only the difference counts.</summary>
        public int Next;

        /// <summary>Fraction bits of a level: 1/64 of a count.</summary>
        internal const int FractionBits = 6;

        /// <summary>Half a count: added before a level is rounded down.</summary>
        internal const int Half = 1 << (FractionBits - 1);

        /// <summary>Takes the first value.</summary>
        public abstract void Begin(int value);

        /// <summary>Takes the value that came in place of <see cref="Next"/>; jumped: it lay far outside the usual error.</summary>
        public abstract void Learn(int value, bool jumped);
    }
}
