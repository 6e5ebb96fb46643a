namespace LoggerBox.Protocol.Rules
{
    /// <summary>
    /// What can be seen of a truck, one cell each of the cause matrix, in its column order.
    /// The "Against" ones are differences of two readings of the same sensor, so its error and the oil's temperature cancel.
    /// </summary>
    public enum Observation : byte
    {
        IdleSpeed = 0,
        GovernedSpeed = 1,
        ReliefDrop = 2,
        RunUpTime = 3,

        StallForward = 4,
        StallReverse = 5,
        StallForwardAgainstReverse = 6,

        MainIdleNeutral = 7,
        MainIdleForward = 8,
        MainIdleReverse = 9,
        MainHoldNeutral = 10,
        MainHoldForward = 11,
        MainHoldReverse = 12,
        MainIdleForwardAgainstNeutral = 13,
        MainIdleReverseAgainstNeutral = 14,
        MainHoldForwardAgainstNeutral = 15,
        MainHoldReverseAgainstNeutral = 16,

        ClutchIdleForward = 17,
        ClutchIdleReverse = 18,
        ClutchHoldForward = 19,
        ClutchHoldReverse = 20,
        ClutchForwardAgainstReverse = 21,
        ClutchFilledForward = 22,
        ClutchFilledReverse = 23,

        ConverterHoldNeutral = 24,
        ConverterHoldForward = 25,
        ConverterHoldReverse = 26,
        ConverterForwardAgainstNeutral = 27,
        ConverterReverseAgainstNeutral = 28,

        EngageForward = 29,
        EngageReverse = 30,
        EngageForwardAgainstReverse = 31,

        MainGovernedAgainstHold = 32,
        PressureScatter = 33,
        ConverterIdleAgainstHold = 34,

        ClutchAgainstMainForward = 35,
        ClutchAgainstMainReverse = 36,

        MainIdleAgainstHold = 37,
        ConverterGovernedAgainstHold = 38,
    }
}
