namespace LoggerBox.Protocol.Records
{
    /// <summary>A record's body: its fields in wire order, written and read beside each other.</summary>
    public interface IRecord
    {
        RecordCode Code { get; }

        void Write(ByteWriter writer);

        /// <summary>
        /// Fills this object from a body. False when the body is too short or a field cannot be; bytes after the last known field
        /// are a later version's and are left alone.
        /// </summary>
        bool TryRead(ByteReader reader);
    }
}
