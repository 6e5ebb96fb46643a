using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;

namespace LoggerBox.Capture.Link
{
    /// <summary>A range of a session on its way to the host, one frame at a time.</summary>
    public sealed class SessionSending
    {
        /// <summary>A frame much shorter would be all overhead.</summary>
        private const int ShortestPayload = 16;

        public bool IsActive;

        private readonly RecordLog log;
        private readonly Data data = new Data();
        private readonly FetchEnd fetchEnd = new FetchEnd();
        private LoggedSession? session;
        private uint position;
        private uint left;
        private int payloadLength;

        public SessionSending(RecordLog log)
        {
            this.log = log;
        }

        public void Begin(LoggedSession source, Fetch request)
        {
            session = source;
            position = request.Offset;
            uint held = request.Offset < source.Length ? source.Length - request.Offset : 0;
            left = request.Length < held ? request.Length : held;
            payloadLength = request.PayloadLength > Data.MaxPayload ? Data.MaxPayload
                : request.PayloadLength < ShortestPayload ? ShortestPayload : request.PayloadLength;
            fetchEnd.SessionNumber = source.Number;
            fetchEnd.Offset = request.Offset;
            fetchEnd.Length = left;
            fetchEnd.Crc = Crc32C.Start;
            IsActive = true;
        }

        /// <summary>The next frame: bytes of the range, and after the last of them its end.</summary>
        public IMessage Next()
        {
            int wanted = left < (uint)payloadLength ? (int)left : payloadLength;
            int read = wanted == 0 || session == null ? 0 : log.Read(session, position, data.Payload, 0, wanted);
            if (read == 0)
            {
                // A store that gives less than it promised ends the range early, and says so.
                IsActive = false;
                fetchEnd.Length -= left;
                return fetchEnd;
            }

            data.SessionNumber = fetchEnd.SessionNumber;
            data.Offset = position;
            data.Length = read;
            fetchEnd.Crc = Crc32C.Append(fetchEnd.Crc, data.Payload, 0, read);
            position += (uint)read;
            left -= (uint)read;
            return data;
        }
    }
}
