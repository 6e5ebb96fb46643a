using LoggerBox.Protocol.Link;

namespace LoggerBox.Capture.Link
{
    /// <summary>When the next live reading is due. It ends by itself: a host that was unplugged does not say so.</summary>
    internal sealed class LiveStream
    {
        /// <summary>A reading is some 60 bytes on the wire: a twentieth of a line of 115,200 baud, which leaves the rest to a download.</summary>
        private const int ShortestMilliseconds = 100;
        private const int LongestSeconds = 30;

        private long interval;
        private long next;
        private long end;

        /// <summary>The answer to the request is the first reading; the others follow it.</summary>
        public void Begin(Watch request, long now)
        {
            int milliseconds = request.IntervalMilliseconds < ShortestMilliseconds ? ShortestMilliseconds : request.IntervalMilliseconds;
            int seconds = request.ForSeconds > LongestSeconds ? LongestSeconds : request.ForSeconds;
            interval = milliseconds * 1000L;
            next = now + interval;
            end = request.IntervalMilliseconds == 0 ? now : now + (seconds * 1000000L);
        }

        public bool IsDue(long now)
        {
            if (now < next || now >= end)
            {
                return false;
            }

            // Counted from now: readings that could not be sent in time are not made up for.
            next = now + interval;
            return true;
        }

        public void Stop() => end = 0;
    }
}
