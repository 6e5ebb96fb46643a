using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;

namespace LoggerBox.Capture.Link
{
    /// <summary>
    /// Compares what the host says that it stored with what the log holds, one piece a step: a long session takes seconds to read.
    /// </summary>
    internal sealed class SessionCheck
    {
        public bool IsActive;

        private readonly RecordLog log;
        private readonly byte[] piece = new byte[1024];
        private readonly Confirmed confirmed = new Confirmed();
        private readonly Refusal refusal = new Refusal { Request = MessageCode.Confirm };
        private LoggedSession? session;
        private uint wantedLength;
        private uint wantedCrc;
        private uint position;
        private uint crc;

        public SessionCheck(RecordLog log)
        {
            this.log = log;
        }

        /// <summary>A repeat of the request that is being worked on does not begin it again.</summary>
        public void Begin(LoggedSession session, Confirm request)
        {
            if (IsActive && this.session == session && wantedLength == request.Length && wantedCrc == request.Crc)
            {
                return;
            }

            this.session = session;
            wantedLength = request.Length;
            wantedCrc = request.Crc;
            position = 0;
            crc = Crc32C.Start;
            IsActive = true;
        }

        /// <summary>The answer when the whole session has been read; null before.</summary>
        public IMessage? Next()
        {
            int read = log.Read(session!, position, piece, 0, piece.Length);
            crc = Crc32C.Append(crc, piece, 0, read);
            position += (uint)read;
            if (read > 0)
            {
                return null;
            }

            IsActive = false;
            if (position != session!.Length || position != wantedLength || crc != wantedCrc)
            {
                refusal.Reason = RefusalReason.DoesNotAgree;
                return refusal;
            }

            if (!log.Confirm(session, crc))
            {
                refusal.Reason = log.IsRecording ? RefusalReason.Recording : RefusalReason.StoreFailed;
                return refusal;
            }

            confirmed.SessionNumber = session.Number;
            return confirmed;
        }
    }
}
