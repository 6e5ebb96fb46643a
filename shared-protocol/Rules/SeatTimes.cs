namespace LoggerBox.Protocol.Rules
{
    /// <summary>Times that no data sheet gives and both the logger's guards and what is printed for the seat go by.</summary>
    public static class SeatTimes
    {
        // Common practice, no source: five seconds over relief are enough to read it.
        public const int ReliefStopMilliseconds = 5000;

        // From memory: what is usual for cooling the converter in neutral, fast enough for the pump and slow enough for the oil.
        public const int CoolDownLowRpm = 1000;
        public const int CoolDownHighRpm = 1500;
    }
}
