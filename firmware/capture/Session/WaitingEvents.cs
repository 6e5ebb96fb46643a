using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Session
{
    /// <summary>Events on their way to the log, in the order in which they came: each waits for a sample set that leaves time for a record.</summary>
    internal sealed class WaitingEvents
    {
        // More than come at once; one more, and the oldest waits no longer.
        private const int Capacity = 8;

        private readonly RecordLog _log;
        private readonly EventRecord[] _events = new EventRecord[Capacity];
        private int _first;
        private int _end;

        public WaitingEvents(RecordLog log)
        {
            _log = log;
            for (int i = 0; i < Capacity; i++)
            {
                _events[i] = new EventRecord();
            }
        }

        /// <summary>There is one.</summary>
        public bool Any;

        public void Add(long now, EventKind kind, int value)
        {
            if (_end - _first == Capacity)
            {
                StoreOne();
            }

            EventRecord next = _events[_end++ & (Capacity - 1)];
            next.Microseconds = now;
            next.Kind = kind;
            next.Value = value;
            Any = true;
        }

        /// <summary>Writes the oldest to the log.</summary>
        public void StoreOne()
        {
            _log.Append(_events[_first++ & (Capacity - 1)]);
            Any = _first != _end;
        }

        public void StoreAll()
        {
            while (Any)
            {
                StoreOne();
            }
        }
    }
}
