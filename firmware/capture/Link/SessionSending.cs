using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;

namespace LoggerBox.Capture.Link
{
    /// <summary>The ranges that the host asked for on their way to it, in the order of its requests, one frame at a time.</summary>
    internal sealed class SessionSending
    {
        /// <summary>A frame much shorter would be all overhead.</summary>
        private const int ShortestPayload = 16;

        /// <summary>Something is still to be sent, the end at least.</summary>
        public bool IsActive;

        private readonly RecordLog log;
        private readonly FetchQueue waiting = new FetchQueue();
        private readonly Data data = new Data();
        private readonly FetchEnd fetchEnd = new FetchEnd();
        private uint position;
        private uint left;
        private int payloadLength;
        private bool endDue;

        public SessionSending(RecordLog log)
        {
            this.log = log;
        }

        /// <summary>False when too many ranges wait already.</summary>
        public bool TryAdd(Fetch request)
        {
            // A repeat of what is on its way just now.
            bool isCurrent = (left > 0 || endDue) && request.Tag == fetchEnd.Tag;
            if (!isCurrent && !waiting.TryAdd(request))
            {
                return false;
            }

            IsActive = true;
            return true;
        }

        public void Stop()
        {
            waiting.Clear();
            left = 0;
            endDue = false;
            IsActive = false;
        }

        /// <summary>The next frame: bytes of the ranges, and the end of each range that wants one. Null: all is sent.</summary>
        public IMessage? Next()
        {
            while (true)
            {
                if (left > 0 && TryRead())
                {
                    return data;
                }

                if (endDue)
                {
                    endDue = false;
                    IsActive = waiting.Count > 0;
                    return fetchEnd;
                }

                if (waiting.Count == 0)
                {
                    IsActive = false;
                    return null;
                }

                Begin(waiting.Take());
            }
        }

        private void Begin(Fetch request)
        {
            LoggedSession? session = log.Sessions.Find(request.SessionNumber);
            uint held = session != null && request.Offset < session.Length ? session.Length - request.Offset : 0;
            position = request.Offset;
            left = request.Length < held ? request.Length : held;
            payloadLength = request.PayloadLength > Data.MaxPayload ? Data.MaxPayload
                : request.PayloadLength < ShortestPayload ? ShortestPayload : request.PayloadLength;
            fetchEnd.SessionNumber = request.SessionNumber;
            fetchEnd.Offset = request.Offset;
            fetchEnd.Tag = request.Tag;
            fetchEnd.Length = left;
            fetchEnd.Crc = Crc32C.Start;
            endDue = request.EndWanted;
        }

        private bool TryRead()
        {
            // Looked up for each frame: the log may have begun again from nothing since the last one.
            LoggedSession? session = log.Sessions.Find(fetchEnd.SessionNumber);
            int wanted = left < (uint)payloadLength ? (int)left : payloadLength;
            int read = session == null ? 0 : log.Read(session, position, data.Payload, 0, wanted);
            if (read == 0)
            {
                // A store that gives less than it promised ends the range early, and says so.
                fetchEnd.Length -= left;
                left = 0;
                return false;
            }

            data.Tag = fetchEnd.Tag;
            data.Offset = position;
            data.Length = read;
            fetchEnd.Crc = Crc32C.Append(fetchEnd.Crc, data.Payload, 0, read);
            position += (uint)read;
            left -= (uint)read;
            return true;
        }
    }
}
