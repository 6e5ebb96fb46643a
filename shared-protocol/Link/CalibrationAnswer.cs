namespace LoggerBox.Protocol.Link
{
    /// <summary>Logger: what it holds for a channel.</summary>
    public sealed class CalibrationAnswer : CalibrationMessage
    {
        public override MessageCode Code => MessageCode.CalibrationAnswer;
    }
}
