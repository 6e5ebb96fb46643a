namespace LoggerBox.Protocol.Link
{
    /// <summary>Host: from the next session on, this is what the channel's counts are worth.</summary>
    public sealed class SendCalibration : CalibrationMessage
    {
        public override MessageCode Code => MessageCode.SendCalibration;
    }
}
