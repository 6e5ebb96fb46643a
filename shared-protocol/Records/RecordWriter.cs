using LoggerBox.Protocol.Framing;

namespace LoggerBox.Protocol.Records
{
    /// <summary>Puts a record with its envelope into a buffer of its own.</summary>
    public sealed class RecordWriter
    {
        /// <summary>The last record written, from its first byte.</summary>
        public readonly byte[] Bytes = new byte[RecordFormat.MaxRecord];

        // A quarter of a step of the logger's.
        private const int CheckedAtATime = 140;

        private readonly ByteWriter writer;
        private int bodyLength;
        private int checkedBytes;
        private uint crc;

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
            WriteHeader(record.Code, bodyEnd, sessionNumber, bootCount, sequence);
            return Close(bodyEnd, Crc32.Of(Bytes, 0, bodyEnd));
        }

        /// <summary>The body is written, and is to be checked in parts by <see cref="AdvanceBlock"/>: what it is made of may change afterwards.</summary>
        public void Begin(IRecord record, uint sessionNumber, ushort bootCount, uint sequence)
        {
            writer.Restart(RecordFormat.HeaderLength, RecordFormat.HeaderLength + RecordFormat.MaxBody);
            record.Write(writer);
            bodyLength = writer.Position;
            WriteHeader(record.Code, bodyLength, sessionNumber, bootCount, sequence);
            checkedBytes = 0;
            crc = Crc32.Start;
        }

        /// <summary>The body of a block is to be written in parts, then checked in parts.</summary>
        public void BeginBlock(SampleBlock block)
        {
            writer.Restart(RecordFormat.HeaderLength, RecordFormat.HeaderLength + RecordFormat.MaxBody);
            block.BeginWriting();
            bodyLength = -1;
        }

        /// <summary>Does a part of it; true when that was the last, and the length is known.</summary>
        public bool AdvanceBlock(SampleBlock? block, uint sessionNumber, ushort bootCount, uint sequence)
        {
            if (bodyLength < 0)
            {
                // What is encoded is only copied.
                bool isCopied = block!.IsEncoded;
                bool isWritten = block.WritePart(writer);
                while (isCopied && !isWritten)
                {
                    isWritten = block.WritePart(writer);
                }

                if (isWritten)
                {
                    bodyLength = writer.Position;
                    WriteHeader(RecordCode.SampleBlock, bodyLength, sessionNumber, bootCount, sequence);
                    checkedBytes = 0;
                    crc = Crc32.Start;
                }

                return false;
            }

            // In parts of about the same length.
            int left = bodyLength - checkedBytes;
            int parts = (left + CheckedAtATime - 1) / CheckedAtATime;
            int part = (left + parts - 1) / parts;
            crc = Crc32.Append(crc, Bytes, checkedBytes, part);
            checkedBytes += part;
            if (checkedBytes == bodyLength)
            {
                BlockLength = Close(bodyLength, crc);
                return true;
            }

            return false;
        }

        /// <summary>Of the record that the last true <see cref="AdvanceBlock"/> made.</summary>
        public int BlockLength { get; private set; }

        private void WriteHeader(RecordCode code, int bodyEnd, uint sessionNumber, ushort bootCount, uint sequence)
        {
            writer.Restart(0, Bytes.Length);
            writer.WriteByte(RecordFormat.FirstMark);
            writer.WriteByte(RecordFormat.SecondMark);
            writer.WriteByte((byte)code);
            writer.WriteByte(RecordFormat.Version);
            writer.WriteUInt16((ushort)(bodyEnd - RecordFormat.HeaderLength));
            writer.WriteUInt32(sessionNumber);
            writer.WriteUInt16(bootCount);
            writer.WriteUInt32(sequence);
        }

        private int Close(int bodyEnd, uint check)
        {
            writer.Restart(bodyEnd, Bytes.Length);
            writer.WriteUInt32(check);
            return writer.Position;
        }
    }
}
