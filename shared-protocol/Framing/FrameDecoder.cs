using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Framing
{
    /// <summary>
    /// Finds frames in whatever comes down the line: fed byte by byte, fixed memory, no frame longer than the format allows.
    /// Noise costs at most the frame that it hits, or two where it hits the delimiter between them.
    /// </summary>
    public sealed class FrameDecoder
    {
        /// <summary>Content of the last frame, read from its first byte; valid until the next byte is accepted.</summary>
        public readonly ByteReader Content;

        /// <summary>The last stretch of bytes taken at a time completed a frame.</summary>
        public bool IsComplete;

        public int Frames;
        public int DamagedFrames;
        public long DamagedBytes;

        private readonly CobsDecoder stuffing = new CobsDecoder(FrameFormat.MaxContent + FrameFormat.CrcLength, FrameFormat.Delimiter);

        public FrameDecoder()
        {
            Content = new ByteReader(stuffing.Decoded);
        }

        /// <summary>True when this byte completed a sound frame.</summary>
        public bool Accept(byte wire) => stuffing.Accept(wire) && IsSound();

        /// <summary>
        /// Takes bytes from..to (to not included) up to the end of the first sound frame, and returns where it stopped; whether a frame was completed
        /// says <see cref="IsComplete"/>. The same as byte by byte, and several times as fast.
        /// </summary>
        public int Accept(byte[] wire, int from, int to)
        {
            int at = from;
            IsComplete = false;
            while (at < to && !IsComplete)
            {
                at = stuffing.Accept(wire, at, to);
                IsComplete = stuffing.HasEnded && IsSound();
            }

            return at;
        }

        private bool IsSound()
        {
            if (stuffing.StuffedLength == 0)
            {
                return false;
            }

            int length = stuffing.DecodedLength - FrameFormat.CrcLength;
            if (stuffing.IsSound && length > 0 && CrcAgrees(length))
            {
                Frames++;
                Content.Restart(0, length);
                return true;
            }

            DamagedFrames++;
            DamagedBytes += stuffing.StuffedLength;
            return false;
        }

        private bool CrcAgrees(int length)
        {
            Content.Restart(length, FrameFormat.CrcLength);
            return Content.ReadUInt32() == Crc32.Of(stuffing.Decoded, 0, length);
        }
    }
}
