using LoggerBox.Protocol.Framing;

namespace LoggerBox.Protocol.Records
{
    /// <summary>Reads envelopes out of bytes that may be cut or damaged: a wrong record is never returned.</summary>
    public sealed class RecordReader
    {
        private readonly byte[] buffer;
        private readonly ByteReader reader;

        public RecordReader(byte[] buffer)
        {
            this.buffer = buffer;
            reader = new ByteReader(buffer);
        }

        /// <summary>Looks at <paramref name="available"/> bytes from <paramref name="offset"/>; fills the envelope only when complete.</summary>
        public EnvelopeResult TryReadEnvelope(int offset, int available, Envelope envelope)
        {
            if (!MarkMayBegin(offset, available))
            {
                return EnvelopeResult.Damaged;
            }

            if (available < RecordFormat.HeaderLength)
            {
                return EnvelopeResult.TooShort;
            }

            reader.Restart(offset + 2, RecordFormat.HeaderLength - 2);
            byte code = reader.ReadByte();
            byte version = reader.ReadByte();
            int bodyLength = reader.ReadUInt16();
            if (version != RecordFormat.Version || bodyLength > RecordFormat.MaxBody)
            {
                return EnvelopeResult.Damaged;
            }

            if (available < bodyLength + RecordFormat.EnvelopeLength)
            {
                return EnvelopeResult.TooShort;
            }

            if (!CrcAgrees(offset, RecordFormat.HeaderLength + bodyLength))
            {
                return EnvelopeResult.Damaged;
            }

            reader.Restart(offset + 6, RecordFormat.HeaderLength - 6);
            envelope.Code = (RecordCode)code;
            envelope.SessionNumber = reader.ReadUInt32();
            envelope.BootCount = reader.ReadUInt16();
            envelope.Sequence = reader.ReadUInt32();
            envelope.BodyOffset = offset + RecordFormat.HeaderLength;
            envelope.BodyLength = bodyLength;
            return EnvelopeResult.Complete;
        }

        /// <summary>Reads the body that a complete envelope names. False for another code, a short body or a field that cannot be.</summary>
        public bool TryReadBody(Envelope envelope, IRecord record)
        {
            if (record.Code != envelope.Code)
            {
                return false;
            }

            reader.Restart(envelope.BodyOffset, envelope.BodyLength);
            return record.TryRead(reader);
        }

        /// <summary>Where the next record may begin after <paramref name="offset"/>, or <paramref name="end"/>.</summary>
        public int FindMark(int offset, int end)
        {
            int at = offset;
            while (at < end && !MarkMayBegin(at, end - at))
            {
                at++;
            }

            return at;
        }

        private bool MarkMayBegin(int offset, int available) =>
            available <= 0
            || (buffer[offset] == RecordFormat.FirstMark && (available == 1 || buffer[offset + 1] == RecordFormat.SecondMark));

        private bool CrcAgrees(int offset, int length)
        {
            reader.Restart(offset + length, RecordFormat.CrcLength);
            return reader.ReadUInt32() == Crc32.Of(buffer, offset, length);
        }
    }
}
