using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Link
{
    /// <summary>A message of the link: the frame's content is its code, then its fields in wire order.</summary>
    public interface IMessage
    {
        MessageCode Code { get; }

        void Write(ByteWriter writer);

        /// <summary>Fills this object from what follows the code. False when it is too short; bytes after the last known field are left alone.</summary>
        bool TryRead(ByteReader reader);
    }
}
