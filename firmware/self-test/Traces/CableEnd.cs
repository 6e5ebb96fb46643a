using LoggerBox.Capture.Link;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.SelfTest.Traces
{
    /// <summary>The PC's end of the cable: requests go in, the frames that come back are kept one at a time.</summary>
    internal sealed class CableEnd : ISerialPort
    {
        private readonly FrameEncoder encoder = new FrameEncoder();
        private readonly FrameDecoder decoder = new FrameDecoder();
        private int sent;
        private int length;

        /// <summary>All that came back.</summary>
        public readonly Digest Heard = new Digest();

        /// <summary>Bytes that one write takes: a line takes less than it is offered.</summary>
        public int TakenAtOnce { get; set; } = 7;

        public int Frames => decoder.Frames;

        /// <summary>The last whole frame, from its code on.</summary>
        public ByteReader Content => decoder.Content;

        public void Send(IMessage request)
        {
            length = encoder.Encode(request);
            sent = 0;
        }

        public int Read(byte[] buffer, int offset, int count)
        {
            int read = 0;
            while (read < count && sent < length)
            {
                buffer[offset + read++] = encoder.Frame[sent++];
            }

            return read;
        }

        public int Write(byte[] buffer, int offset, int count)
        {
            int taken = count < TakenAtOnce ? count : TakenAtOnce;
            Heard.Add(buffer, offset, taken);
            for (int i = 0; i < taken; i++)
            {
                decoder.Accept(buffer[offset + i]);
            }

            return taken;
        }
    }
}
