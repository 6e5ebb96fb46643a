using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Logger: the plan is kept and is used from the next session on.</summary>
    public sealed class PlanAnswer : IMessage
    {
        public MessageCode Code => MessageCode.PlanAnswer;

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
