namespace LoggerBox.Capture.Storage
{
    /// <summary>The sessions of a log, oldest first.</summary>
    public sealed class SessionTable
    {
        /// <summary>More sessions than a season of tests; a log with so many stops as a full one does.</summary>
        public const int Capacity = 512;

        public int Count;
        public ushort HighestBootCount;

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

        /// <summary>The host has every session; true of none, too.</summary>
        public bool AllConfirmed()
        {
            for (int i = 0; i < Count; i++)
            {
                if (!sessions[i].Confirmed)
                {
                    return false;
                }
            }

            return true;
        }

        public void Clear() => Count = 0;

        /// <summary>A place for one more session. Not to be called when full.</summary>
        public LoggedSession Add(uint number, ushort bootCount)
        {
            // Made once for each place in the table and used again: a long-lived log makes no garbage.
            LoggedSession session = sessions[Count] ?? new LoggedSession();
            sessions[Count++] = session;
            session.Number = number;
            session.BootCount = bootCount;
            session.Length = 0;
            session.Ended = false;
            session.Confirmed = false;
            if (bootCount > HighestBootCount)
            {
                HighestBootCount = bootCount;
            }

            return session;
        }

        /// <summary>Turns the order round: a log is read from its end.</summary>
        public void Reverse()
        {
            for (int i = 0, j = Count - 1; i < j; i++, j--)
            {
                LoggedSession first = sessions[i];
                sessions[i] = sessions[j];
                sessions[j] = first;
            }
        }
    }
}
