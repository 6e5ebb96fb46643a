namespace LoggerBox.Protocol.Records
{
    /// <summary>What of the board failed, or came back; the numbers are on the wire.</summary>
    public enum BoardFault : byte
    {
        LoopBus = 1,
        LoopConverter = 2,
        Card = 3,
        GearInputs = 4,
        PulseCounter = 5,
        Supply = 6,
        Clock = 7,
        Settings = 8,
    }
}
