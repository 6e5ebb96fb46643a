namespace LoggerBox.Protocol.Rules
{
    /// <summary>What the logger tells the person in the seat, by sound, lamp and display; the numbers are on the wire.</summary>
    public enum Cue : byte
    {
        None = 0,
        Captured = 1,
        StallTarget = 2,
        StallWarn = 3,
        StallStop = 4,
        CoolDown = 5,
        CoolDownOver = 6,
        Overspeed = 7,
        DriveCut = 8,
        PressureTooLowToStall = 9,
        MainFarTooHigh = 10,
        LoopFault = 11,
        SetUpClearOrDown = 12,
        AllCaptured = 13,
        StoreFull = 14,
        ReliefStop = 15,
        ZeroAgain = 16,
    }
}
