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

        public int Frames;
        public int DamagedFrames;
        public long DamagedBytes;

        private readonly CobsDecoder stuffing = new CobsDecoder(FrameFormat.MaxContent + FrameFormat.CrcLength, FrameFormat.Delimiter);

        public FrameDecoder()
        {
            Content = new ByteReader(stuffing.Decoded);
        }

        /// <summary>True when this byte completed a sound frame.</summary>
        public bool Accept(byte wire)
        {
            if (!stuffing.Accept(wire) || stuffing.StuffedLength == 0)
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
