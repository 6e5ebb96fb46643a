using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Storage
{
    /// <summary>The sessions of a log, in the order of its bytes, built from its records and from nothing else.</summary>
    public sealed class SessionTable
    {
        /// <summary>More sessions than a season of tests; a log with so many stops as a full one does.</summary>
        public const int Capacity = 512;

        public int Count;
        public ushort HighestBootCount;

        /// <summary>Sequence that the next record of the last session carries.</summary>
        public uint NextSequence;

        private readonly LoggedSession[] sessions = new LoggedSession[Capacity];

        public bool IsFull => Count == Capacity;

        public LoggedSession this[int index] => sessions[index];

        public LoggedSession? Last => Count == 0 ? null : sessions[Count - 1];

        public LoggedSession? Find(uint number)
        {
            for (int i = 0; i < Count; i++)
            {
                if (sessions[i].Number == number)
                {
                    return sessions[i];
                }
            }

            return null;
        }

        public bool AllConfirmed()
        {
            for (int i = 0; i < Count; i++)
            {
                if (!sessions[i].Confirmed)
                {
                    return false;
                }
            }

            return Count > 0;
        }

        public void Clear()
        {
            Count = 0;
            NextSequence = 0;
        }

        /// <summary>
        /// Takes a record into account that stands at this offset. False when it cannot stand there: it is left from something else.
        /// </summary>
        public bool Take(Envelope envelope, long offset)
        {
            if (envelope.Code == RecordCode.SessionConfirmation)
            {
                return true;
            }

            LoggedSession? last = Last;
            if (last == null || envelope.SessionNumber > last.Number)
            {
                // Also where the header is damaged: its other records are sound, and they are all that there is of that session.
                return Begin(envelope, offset);
            }

            bool follows = last != null && !last.Ended && envelope.SessionNumber == last.Number
                && envelope.BootCount == last.BootCount && envelope.Sequence >= NextSequence;
            if (!follows)
            {
                return false;
            }

            last!.Length = (uint)(offset + envelope.RecordLength - last.StartOffset);
            last.Ended = envelope.Code == RecordCode.SessionEnd;
            NextSequence = envelope.Sequence + 1;
            return true;
        }

        public void Confirm(uint number)
        {
            LoggedSession? session = Find(number);
            if (session != null)
            {
                session.Confirmed = true;
            }
        }

        private bool Begin(Envelope envelope, long offset)
        {
            if (IsFull)
            {
                return false;
            }

            // Made once for each place in the table and used again: a long-lived log makes no garbage.
            LoggedSession session = sessions[Count] ?? new LoggedSession();
            sessions[Count++] = session;
            session.Number = envelope.SessionNumber;
            session.BootCount = envelope.BootCount;
            session.StartOffset = offset;
            session.Length = (uint)envelope.RecordLength;
            session.Ended = envelope.Code == RecordCode.SessionEnd;
            session.Confirmed = false;
            NextSequence = envelope.Sequence + 1;
            if (envelope.BootCount > HighestBootCount)
            {
                HighestBootCount = envelope.BootCount;
            }

            return true;
        }
    }
}
