namespace LoggerBox.Protocol.Records
{
    /// <summary>
    /// Walks through the records of a session's bytes, from first to last, over damage and to the cut where there is one.
    /// </summary>
    public sealed class RecordScan
    {
        /// <summary>The record that the last MoveNext found.</summary>
        public readonly Envelope Envelope = new Envelope();

        /// <summary>Bytes between records that were no record.</summary>
        public int DamagedBytes;

        /// <summary>Bytes after the last record that were no whole record.</summary>
        public int UnfinishedBytes;

        private readonly RecordReader reader;
        private readonly int end;
        private int position;

        public RecordScan(byte[] buffer, int offset, int count)
        {
            reader = new RecordReader(buffer);
            position = offset;
            end = offset + count;
        }

        public bool MoveNext()
        {
            int at = position;
            while (at < end)
            {
                // A damaged length may promise more bytes than there are: what follows can still hold whole records.
                if (reader.TryReadEnvelope(at, end - at, Envelope) == EnvelopeResult.Complete)
                {
                    DamagedBytes += at - position;
                    position = at + Envelope.RecordLength;
                    return true;
                }

                at = reader.FindMark(at + 1, end);
            }

            UnfinishedBytes += end - position;
            position = end;
            return false;
        }

        public bool TryReadBody(IRecord record) => reader.TryReadBody(Envelope, record);
    }
}
