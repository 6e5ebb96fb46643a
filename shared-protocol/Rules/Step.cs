namespace LoggerBox.Protocol.Rules
{
    /// <summary>The steps of the test; the numbers are on the wire.</summary>
    public enum Step : byte
    {
        None = 0,
        Zero = 1,
        IdleNeutral = 2,
        IdleForward = 3,
        IdleReverse = 4,
        Governed = 5,
        Relief = 6,
        StallForward = 7,
        StallReverse = 8,
        HoldNeutral = 9,
        HoldForward = 10,
        HoldReverse = 11,

        // In gear, but which gear is not known: no selector input, no mark.
        IdleInGear = 12,
        StallInGear = 13,
        HoldInGear = 14,
    }
}
