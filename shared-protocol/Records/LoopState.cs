namespace LoggerBox.Protocol.Records
{
    /// <summary>What a loop's current says (NAMUR NE 43): the second part of a <see cref="EventKind.LoopState"/> event's value.</summary>
    public enum LoopState : byte
    {
        NoReading = 0,
        Measuring = 1,

        /// <summary>3.6 mA or less.</summary>
        Open = 2,

        /// <summary>21 mA or more.</summary>
        Shorted = 3,

        /// <summary>Below 3.8 mA or from 20.5 mA on: the transducer is at the end of what it can show.</summary>
        Saturated = 4,
    }
}
