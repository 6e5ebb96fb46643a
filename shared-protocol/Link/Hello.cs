using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Host: who is there? The first request of every connection.</summary>
    public sealed class Hello : IMessage
    {
        /// <summary>Link version that the host speaks: <see cref="LinkVersion.Current"/>.</summary>
        public ushort Version;

        public MessageCode Code => MessageCode.Hello;

        public void Write(ByteWriter writer)
        {
            writer.WriteUInt16(Version);
        }

        public bool TryRead(ByteReader reader)
        {
            Version = reader.ReadUInt16();
            return !reader.TooShort;
        }
    }
}
