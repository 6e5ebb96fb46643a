using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Logger: the request was understood and is not done.</summary>
    public sealed class Refusal : IMessage
    {
        /// <summary>The request that is refused.</summary>
        public MessageCode Request;

        public RefusalReason Reason;

        public MessageCode Code => MessageCode.Refusal;

        public void Write(ByteWriter writer)
        {
            writer.WriteByte((byte)Request);
            writer.WriteByte((byte)Reason);
        }

        public bool TryRead(ByteReader reader)
        {
            Request = (MessageCode)reader.ReadByte();
            Reason = (RefusalReason)reader.ReadByte();
            return !reader.TooShort;
        }
    }
}
