using LoggerBox.Protocol.Framing;

namespace LoggerBox.Protocol.Records
{
    /// <summary>Puts a record with its envelope into a buffer of its own.</summary>
    public sealed class RecordWriter
    {
        /// <summary>The last record written, from its first byte.</summary>
        public readonly byte[] Bytes = new byte[RecordFormat.MaxRecord];

        // A sixth of a step of the logger's.
        private const int CheckedAtATime = 64;

        // Two of them are like another part.
        private const int ChecksOfPart = 2 * CheckedAtATime;

        // The copying of what is encoded, and some of its check.
        private const int UsualParts = 4;

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

        /// <summary>The body of a record is to be written in parts, then checked in parts.</summary>
        public void Begin(IPartedRecord record)
        {
            writer.Restart(RecordFormat.HeaderLength, RecordFormat.HeaderLength + RecordFormat.MaxBody);
            record.BeginWriting();
            bodyLength = -1;
        }

        /// <summary>Parts that a record takes yet that was begun, about.</summary>
        public int PartsLeft(IPartedRecord record) =>
            bodyLength < 0 ? record.PartsLeft + UsualParts : (bodyLength - checkedBytes + ChecksOfPart - 1) / ChecksOfPart;

        /// <summary>It is written, and is checked now.</summary>
        public bool IsChecking => bodyLength >= 0;

        /// <summary>Does a part of it; true when that was the last, and the length is known.</summary>
        public bool Advance(IPartedRecord record, uint sessionNumber, ushort bootCount, uint sequence)
        {
            if (bodyLength < 0)
            {
                bool isNearlyWritten = record.IsNearlyWritten;
                bool isWritten = record.WritePart(writer);
                while (isNearlyWritten && !isWritten)
                {
                    isWritten = record.WritePart(writer);
                }

                if (isWritten)
                {
                    bodyLength = writer.Position;
                    WriteHeader(record.Code, bodyLength, sessionNumber, bootCount, sequence);
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
                PartedLength = Close(bodyLength, crc);
                return true;
            }

            return false;
        }

        /// <summary>Of the record that the last true <see cref="Advance"/> made.</summary>
        public int PartedLength { get; private set; }

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
