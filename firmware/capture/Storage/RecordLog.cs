using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Storage
{
    /// <summary>
    /// The logger's sessions as one run of records. A record that Append took survives any later cut; a cut costs at most the record
    /// that was being written; nothing that is not whole is ever given out; a full store stops the recording.
    /// </summary>
    public sealed class RecordLog
    {
        private const int ClosingBytes = 2 * (RecordFormat.EnvelopeLength + 32);
        private const int ConfirmationBytes = RecordFormat.EnvelopeLength + 12;

        public readonly SessionTable Sessions = new SessionTable();

        /// <summary>What Open found: bytes of an unfinished tail, dropped, and bytes of damage between records, left as a gap.</summary>
        public long DroppedTailBytes;
        public long DamagedBytes;

        /// <summary>A session is open for records.</summary>
        public bool IsRecording;

        /// <summary>The store took no more: the session is to be ended.</summary>
        public bool IsFull;

        private readonly IRecordStore store;
        private readonly RecordWriter writer = new RecordWriter();
        private readonly RecordReader written;
        private readonly Envelope envelope = new Envelope();
        private readonly DropoutRecord fullStore = new DropoutRecord();
        private readonly SessionConfirmation confirmation = new SessionConfirmation();
        private uint lastNumber;
        private bool isDamaged;

        public RecordLog(IRecordStore store)
        {
            this.store = store;
            written = new RecordReader(writer.Bytes);
        }

        /// <summary>Bytes that a session may still use.</summary>
        public long FreeBytes
        {
            get
            {
                long free = store.Capacity - store.Length - ReservedBytes;
                return free < 0 ? 0 : free;
            }
        }

        public long CapacityBytes => store.Capacity;

        /// <summary>Finds what the store holds. To be called once, before anything else; a cut during it is a cut before it.</summary>
        public void Open()
        {
            Sessions.Clear();
            LogRecovery recovery = new LogRecovery(store);
            recovery.Run(Sessions);
            DamagedBytes = recovery.DamagedBytes;
            DroppedTailBytes = store.Length - recovery.EndOfRecords;
            store.Truncate(recovery.EndOfRecords);
            lastNumber = Sessions.Last == null ? 0 : Sessions.Last.Number;
        }

        /// <summary>
        /// Begins a session and gives the header its number. False when there is no room: sessions that the host has not confirmed
        /// are never given up for a new one.
        /// </summary>
        public bool BeginSession(SessionHeader header)
        {
            if (IsRecording)
            {
                return false;
            }

            MakeRoom();
            header.SessionNumber = lastNumber + 1;
            IsFull = Sessions.IsFull || !TryWrite(header, header.SessionNumber, header.BootCount, 0, ReservedBytes);
            IsRecording = !IsFull;
            if (IsRecording)
            {
                lastNumber = header.SessionNumber;
            }

            return IsRecording;
        }

        /// <summary>False when the record was not stored: no session is open, or the store is full.</summary>
        public bool Append(IRecord record)
        {
            if (!IsRecording || IsFull)
            {
                return false;
            }

            IsFull = !TryContinue(record, ReservedBytes);
            return !IsFull;
        }

        /// <summary>Closes the session. Where the store was full, a dropout that says so goes before the end.</summary>
        public bool EndSession(SessionEnd end)
        {
            if (!IsRecording)
            {
                return false;
            }

            if (IsFull)
            {
                fullStore.FromMicroseconds = end.Microseconds;
                fullStore.ToMicroseconds = end.Microseconds;
                fullStore.Reason = DropoutReason.StoreFull;
                end.Reason = SessionEndReason.StoreFull;
                TryContinue(fullStore, 0);
            }

            IsRecording = false;
            return TryContinue(end, 0);
        }

        /// <summary>Bytes of a session, from an offset into it. Returns how many: fewer than asked for at its end.</summary>
        public int Read(LoggedSession session, uint offset, byte[] buffer, int bufferOffset, int count)
        {
            if (offset >= session.Length)
            {
                return 0;
            }

            uint left = session.Length - offset;
            return store.Read(session.StartOffset + offset, buffer, bufferOffset, left < (uint)count ? (int)left : count);
        }

        /// <summary>
        /// Notes that the host has stored the session. The caller has compared length and CRC with the host's. Not while recording:
        /// the note would stand inside a session. Safe to repeat.
        /// </summary>
        public bool Confirm(LoggedSession session, uint crc)
        {
            if (IsRecording)
            {
                return false;
            }

            if (!session.Confirmed)
            {
                confirmation.SessionNumber = session.Number;
                confirmation.Length = session.Length;
                confirmation.Crc = crc;
                session.Confirmed = TryWrite(confirmation, session.Number, session.BootCount, 0, 0);
            }

            return session.Confirmed;
        }

        // Kept back so that a full store can still say that it is full, close the session and take the host's confirmations.
        private int ReservedBytes => ClosingBytes + (ConfirmationBytes * (Sessions.Count + 1));

        // Only a log of which the host has every session is begun again from nothing.
        private void MakeRoom()
        {
            bool scarce = FreeBytes < store.Capacity / 2 || Sessions.IsFull;
            if (scarce && Sessions.AllConfirmed())
            {
                Sessions.Clear();
                store.Truncate(0);
                isDamaged = false;
            }
        }

        private bool TryContinue(IRecord record, int keepFree)
        {
            LoggedSession session = Sessions.Last!;
            return TryWrite(record, session.Number, session.BootCount, Sessions.NextSequence, keepFree);
        }

        private bool TryWrite(IRecord record, uint number, ushort bootCount, uint sequence, int keepFree)
        {
            int length = writer.Write(record, number, bootCount, sequence);
            long offset = store.Length;
            if (length == 0 || length > store.Capacity - offset - keepFree)
            {
                return false;
            }

            if (isDamaged || !store.Append(writer.Bytes, 0, length))
            {
                // Part of the record may be there: nothing may follow it until Open has looked.
                isDamaged = true;
                return false;
            }

            written.TryReadEnvelope(0, length, envelope);
            return Sessions.Take(envelope, offset);
        }
    }
}
