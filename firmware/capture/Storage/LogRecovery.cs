using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Storage
{
    /// <summary>
    /// Reads a store once from its first byte to its last and finds what may be trusted. It writes nothing, so it can itself be cut.
    /// </summary>
    public sealed class LogRecovery
    {
        /// <summary>Bytes between records that belong to no record.</summary>
        public long DamagedBytes;

        /// <summary>Where the last whole record ends: what follows is an unfinished tail.</summary>
        public long EndOfRecords;

        private readonly IRecordStore store;
        private readonly byte[] window = new byte[2 * RecordFormat.MaxRecord];
        private readonly RecordReader reader;
        private readonly Envelope envelope = new Envelope();
        private readonly SessionConfirmation confirmation = new SessionConfirmation();
        private long windowOffset;
        private int windowLength;

        public LogRecovery(IRecordStore store)
        {
            this.store = store;
            reader = new RecordReader(window);
        }

        public void Run(SessionTable table)
        {
            DamagedBytes = 0;
            EndOfRecords = 0;
            windowOffset = 0;
            windowLength = 0;
            long position = 0;
            while (position < store.Length)
            {
                int at = Show(position);
                EnvelopeResult result = reader.TryReadEnvelope(at, windowLength - at, envelope);
                if (result == EnvelopeResult.Complete && table.Take(envelope, position))
                {
                    TakeConfirmation(table);
                    DamagedBytes += position - EndOfRecords;
                    position += envelope.RecordLength;
                    EndOfRecords = position;
                }
                else
                {
                    position += reader.FindMark(at + 1, windowLength) - at;
                }
            }
        }

        private void TakeConfirmation(SessionTable table)
        {
            if (reader.TryReadBody(envelope, confirmation))
            {
                table.Confirm(confirmation.SessionNumber);
            }
        }

        // Makes sure that the longest record beginning at this position, or all that the store has, lies in the window.
        private int Show(long position)
        {
            int at = (int)(position - windowOffset);
            bool reachesEnd = windowOffset + windowLength >= store.Length;
            if (windowLength == 0 || at > windowLength || (windowLength - at < RecordFormat.MaxRecord && !reachesEnd))
            {
                windowOffset = position;
                windowLength = store.Read(position, window, 0, window.Length);
                at = 0;
            }

            return at;
        }
    }
}
