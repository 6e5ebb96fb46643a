using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Storage
{
    /// <summary>
    /// The logger's sessions on a card. Records are gathered and stored together with the next block of samples; what is stored survives
    /// any later cut, and a cut costs at most the records since then. Nothing that is not whole is ever given out; a full card stops
    /// the recording.
    /// </summary>
    public sealed partial class RecordLog
    {
        private const int ClosingBytes = 2 * (RecordFormat.EnvelopeLength + 32);

        public readonly SessionTable Sessions = new SessionTable();

        /// <summary>What Open found: bytes at the ends of sessions that were cut, and pages between sessions that cannot be read.</summary>
        public long UnfinishedBytes;
        public int UnreadablePages;

        /// <summary>A session is open for records.</summary>
        public bool IsRecording;

        /// <summary>The card took no more: the session is to be ended.</summary>
        public bool IsFull;

        private readonly CardPages pages;
        private readonly BlockWriter block;
        private readonly SessionBytes reading;
        private readonly LogTail tail;
        private readonly LogRecovery recovery;
        private readonly RecordWriter writer = new RecordWriter();
        private readonly DropoutRecord fullStore = new DropoutRecord();
        private readonly SessionConfirmation confirmation = new SessionConfirmation();
        private uint lastNumber;
        private uint nextSequence;
        private int nextPage;
        private bool isBroken;

        public RecordLog(IRecordStore store)
        {
            pages = new CardPages(store);
            block = new BlockWriter(pages);
            reading = new SessionBytes(pages);
            tail = new LogTail(pages);
            recovery = new LogRecovery(pages);
        }

        /// <summary>Bytes that a session may still use.</summary>
        public long FreeBytes
        {
            get
            {
                int free = FreePages;
                return free < 0 ? 0 : (long)free * pages.PayloadLength;
            }
        }

        public long CapacityBytes => pages.Capacity;

        // Kept back so that a full card can still say that it is full, close the session and take the host's confirmations.
        private int FreePages => pages.Count - nextPage - (ClosingBytes / pages.PayloadLength) - Sessions.Count - 3;

        /// <summary>Finds what the card holds. To be called before anything else. It writes nothing: a cut during it is a cut before it.</summary>
        public void Open()
        {
            block.Length = 0;
            inWork.End();
            pages.Forget();
            pages.HighestNumber = 0;
            pages.HighestBootCount = 0;
            tail.Find();
            recovery.Run(Sessions, tail.LastPage);
            reading.Forget();
            UnfinishedBytes = recovery.UnfinishedBytes;
            UnreadablePages = recovery.UnreadablePages;
            nextPage = tail.NextPage;

            // A spoiled page may hold the beginning of a session, and be readable again one day: its number stays its own.
            lastNumber = pages.HighestNumber + (uint)(tail.NextPage - tail.LastPage - 1 + tail.FirstPage);
            IsRecording = false;
            IsFull = false;
            isBroken = false;
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
            IsFull = Sessions.IsFull || isBroken || FreePages < block.PagesWith(RecordFormat.MaxRecord);
            if (IsFull)
            {
                return false;
            }

            header.SessionNumber = ++lastNumber;
            nextSequence = 0;
            Sessions.Add(header.SessionNumber, header.BootCount).StartPage = nextPage;
            IsRecording = true;
            IsFull = !TryGather(header) || !TryStore();
            IsRecording = !IsFull;
            Sessions.Count -= IsFull ? 1 : 0;
            return IsRecording;
        }

        /// <summary>
        /// Takes a record; a block of samples is safe from a power cut when this returns, and with it all that came before. False when the
        /// record was not taken: no session is open, or the card is full.
        /// </summary>
        public bool Append(IRecord record)
        {
            if (!IsRecording || IsFull)
            {
                return false;
            }

            if (record is SampleBlock samples)
            {
                return Begin(samples) && FinishParts();
            }

            IsFull = FreePages < block.PagesWith(RecordFormat.MaxRecord) || !TryGather(record)
                || (record.Code == RecordCode.SampleBlock && !TryStore());
            return !IsFull;
        }

        /// <summary>Closes the session. Where the card was full, a dropout that says so goes before the end.</summary>
        public bool EndSession(SessionEnd end)
        {
            if (!IsRecording)
            {
                return false;
            }

            FinishParts();
            if (IsFull)
            {
                fullStore.FromMicroseconds = end.Microseconds;
                fullStore.ToMicroseconds = end.Microseconds;
                fullStore.Reason = DropoutReason.StoreFull;
                end.Reason = SessionEndReason.StoreFull;
                TryGather(fullStore);
            }

            IsRecording = false;
            Sessions.Last!.Ended = TryGather(end) && TryStore();
            return Sessions.Last!.Ended;
        }

        /// <summary>Bytes of a session as far as it is stored, from an offset into it. Returns how many: fewer than asked for at its end.</summary>
        public int Read(LoggedSession session, uint offset, byte[] buffer, int bufferOffset, int count)
        {
            if (offset >= session.Length)
            {
                return 0;
            }

            uint left = session.Length - offset;
            int readable = left < (uint)count ? (int)left : count;
            reading.Read(session, offset, buffer, bufferOffset, readable);
            return readable;
        }

        /// <summary>
        /// Notes that the host has stored the session. The caller has compared length and CRC with the host's. Not while recording:
        /// the note would stand inside a session. Safe to repeat.
        /// </summary>
        public bool Confirm(LoggedSession session, uint crc)
        {
            if (IsRecording || isBroken)
            {
                return false;
            }

            if (!session.Confirmed)
            {
                confirmation.SessionNumber = session.Number;
                confirmation.Length = session.Length;
                confirmation.Crc = crc;
                session.Confirmed = TryNote(session);
            }

            return session.Confirmed;
        }

        // Only a log of which the host has every session is begun again, over the old one: that stays whole until the new one stands.
        private void MakeRoom()
        {
            bool scarce = FreeBytes < pages.Capacity / 2 || Sessions.IsFull || pages.Generation == 0;
            if (scarce && Sessions.AllConfirmed())
            {
                nextPage = tail.FirstPage;
                pages.Generation++;
                Sessions.Clear();
                isBroken = false;
            }
        }

        private bool TryGather(IRecord record)
        {
            LoggedSession session = Sessions.Last!;
            int length = writer.Write(record, session.Number, session.BootCount, TakeSequence());
            if (inWork.IsInWork && !inWork.HasRoomFor(length))
            {
                FinishParts();
            }

            bool waits = inWork.IsInWork && length > 0;
            if (waits)
            {
                inWork.Add(writer.Bytes, length);
            }

            bool gathered = waits || (length > 0 && TryAdd(writer.Bytes, length));
            nextSequence -= gathered ? 0 : 1u;
            return gathered;
        }

        private uint TakeSequence()
        {
            uint taken = nextSequence;
            nextSequence++;
            return taken;
        }

        private bool TryAdd(byte[] record, int length)
        {
            bool fits = block.Fits(length) || TryStore();
            if (fits)
            {
                block.Add(record, length);
            }

            return fits;
        }

        private bool TryStore()
        {
            LoggedSession session = Sessions.Last!;
            uint length = (uint)block.Length;
            int start = session.StartPage;
            if (!TryWrite(PageKind.Session, start, session.Length))
            {
                return false;
            }

            session.Length += length;
            session.LastPage = nextPage - 1;
            return true;
        }

        // A card without room for the note is full of sessions that the host has: the next session begins it again in any case.
        private bool TryNote(LoggedSession session)
        {
            int length = writer.Write(confirmation, session.Number, session.BootCount, 0);
            block.Add(writer.Bytes, length);
            if (nextPage + block.PagesWith(0) > pages.Count)
            {
                block.Length = 0;
                return true;
            }

            return TryWrite(PageKind.Note, nextPage, 0);
        }

        private bool TryWrite(PageKind kind, int start, uint offset)
        {
            int count = block.PagesWith(0);
            bool fits = !isBroken && nextPage + count <= pages.Count;
            bool written = fits && block.TryWrite(nextPage, kind, Sessions.Last!, start, offset);

            // Part of the block may be there: nothing may follow it until Open has looked.
            isBroken = !written;
            block.Length = 0;
            nextPage += written ? count : 0;
            reading.Forget();
            return written;
        }
    }
}
