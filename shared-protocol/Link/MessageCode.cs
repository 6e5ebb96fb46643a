namespace LoggerBox.Protocol.Link
{
    /// <summary>First byte of a frame's content. The host asks; the logger speaks only when it was asked.</summary>
    public enum MessageCode : byte
    {
        None = 0,
        Hello = 0x01,
        List = 0x02,
        Fetch = 0x03,
        Confirm = 0x04,
        SendPlan = 0x05,
        SetClock = 0x06,
        Watch = 0x07,
        SendCalibration = 0x08,
        GetCalibration = 0x09,

        HelloAnswer = 0x81,
        SessionList = 0x82,
        Data = 0x83,
        FetchEnd = 0x84,
        Confirmed = 0x85,
        PlanAnswer = 0x86,
        ClockAnswer = 0x87,
        LiveReadings = 0x88,
        CalibrationAnswer = 0x89,
        Refusal = 0xFF,
    }
}
