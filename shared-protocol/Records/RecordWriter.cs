using LoggerBox.Protocol.Framing;

namespace LoggerBox.Protocol.Records
{
    /// <summary>Puts a record with its envelope into a buffer of its own.</summary>
    public sealed class RecordWriter
    {
        /// <summary>The last record written, from its first byte.</summary>
        public readonly byte[] Bytes = new byte[RecordFormat.MaxRecord];

        private readonly ByteWriter writer;

        public RecordWriter()
        {
            writer = new ByteWriter(Bytes);
        }

        /// <summary>Length of the whole record in <see cref="Bytes"/>; 0 when the body is longer than a record may be.</summary>
        public int Write(IRecord record, uint sessionNumber, ushort bootCount, uint sequence)
        {
            writer.Restart(RecordFormat.HeaderLength, RecordFormat.HeaderLength + RecordFormat.MaxBody);
            record.Write(writer);
            if (writer.Overflowed)
            {
                return 0;
            }

            int bodyEnd = writer.Position;
            writer.Restart(0, Bytes.Length);
            writer.WriteByte(RecordFormat.FirstMark);
            writer.WriteByte(RecordFormat.SecondMark);
            writer.WriteByte((byte)record.Code);
            writer.WriteByte(RecordFormat.Version);
            writer.WriteUInt16((ushort)(bodyEnd - RecordFormat.HeaderLength));
            writer.WriteUInt32(sessionNumber);
            writer.WriteUInt16(bootCount);
            writer.WriteUInt32(sequence);
            writer.Position = bodyEnd;
            writer.WriteUInt32(Crc32.Of(Bytes, 0, bodyEnd));
            return writer.Position;
        }
    }
}
