using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Logger: the clock is set.</summary>
    public sealed class ClockAnswer : IMessage
    {
        public MessageCode Code => MessageCode.ClockAnswer;

        public void Write(ByteWriter writer)
        {
            // The code says it all.
        }

        public bool TryRead(ByteReader reader)
        {
            return !reader.TooShort;
        }
    }
}
