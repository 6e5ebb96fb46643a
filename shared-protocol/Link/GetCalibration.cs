using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>Host: what is this channel's calibration?</summary>
    public sealed class GetCalibration : IMessage
    {
        /// <summary>1 main, 2 clutch, 3 converter.</summary>
        public byte Channel;

        public MessageCode Code => MessageCode.GetCalibration;

        public void Write(ByteWriter writer)
        {
            writer.WriteByte(Channel);
        }

        public bool TryRead(ByteReader reader)
        {
            Channel = reader.ReadByte();
            return !reader.TooShort;
        }
    }
}
