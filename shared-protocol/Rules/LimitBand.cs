namespace LoggerBox.Protocol.Rules
{
    /// <summary>How a reading stands to a limit.</summary>
    public enum LimitOutcome : byte
    {
        NotJudged = 0,
        In = 1,
        Low = 2,
        High = 3,
        CloseLow = 4,
        CloseHigh = 5,
    }

    /// <summary>
    /// Bounds of one quantity in any integer unit (pascal, tenths of rpm, milliseconds, millionths of a printed unit).
    /// Three states near a limit, after ISO 14253-1 and JCGM 106: a reading nearer to it than its expanded uncertainty, or exactly on it,
    /// is too close to call.
    /// </summary>
    public struct LimitBand
    {
        public bool HasMin;
        public bool HasMax;
        public long Min;
        public long Max;

        public LimitOutcome Judge(long value, long expandedUncertainty)
        {
            if (HasMin)
            {
                long above = value - Min;
                if (above == 0 || (above < expandedUncertainty && -above < expandedUncertainty))
                {
                    return LimitOutcome.CloseLow;
                }

                if (above < 0)
                {
                    return LimitOutcome.Low;
                }
            }

            if (HasMax)
            {
                long below = Max - value;
                if (below == 0 || (below < expandedUncertainty && -below < expandedUncertainty))
                {
                    return LimitOutcome.CloseHigh;
                }

                if (below < 0)
                {
                    return LimitOutcome.High;
                }
            }

            return HasMin || HasMax ? LimitOutcome.In : LimitOutcome.NotJudged;
        }
    }
}
