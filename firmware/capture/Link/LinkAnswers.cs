using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Link
{
    /// <summary>
    /// The logger's side of the link: answers requests out of the record log and never samples. It reads while it sends, at most one
    /// frame a step: two ends that only send until they are done wait for each other for ever.
    /// </summary>
    public sealed class LinkAnswers
    {
        /// <summary>A plan that has come in; whoever uses it clears the flag.</summary>
        public readonly PlanRecord Plan = new PlanRecord();
        public bool PlanArrived;

        /// <summary>A time that has come in, seconds since 1970 UTC; whoever uses it clears the flag.</summary>
        public uint UtcSeconds;
        public bool ClockArrived;

        /// <summary>What a host that watches is told: the capture engine's own, while there is one.</summary>
        public LiveReadings Live = new LiveReadings();

        public readonly CalibrationTable Calibrations = new CalibrationTable();

        /// <summary>How often a host has greeted.</summary>
        public uint Greetings;

        private readonly ISerialPort port;
        private readonly RequestHandling requests;
        private readonly FrameDecoder decoder = new FrameDecoder();
        private readonly FrameEncoder encoder = new FrameEncoder();
        private readonly byte[] incoming = new byte[256];
        private IMessage? answer;
        private int frameLength;
        private int framePosition;

        public LinkAnswers(RecordLog log, ISerialPort port, uint loggerId, ushort bootCount)
        {
            this.port = port;
            requests = new RequestHandling(this, log, loggerId, bootCount);
        }

        /// <summary>
        /// Reads what has come and sends what is due. The logger's time is for the hello. False when there was nothing to do.
        /// </summary>
        public bool Step(long microseconds, uint utcSeconds)
        {
            bool hadArrived = HasArrived;
            bool busy = ReadRequests(microseconds, utcSeconds);
            if (HasArrived && !hadArrived)
            {
                // The answer says that it is kept: whoever keeps it does so before the next step.
                return true;
            }

            if (framePosition == frameLength)
            {
                busy |= requests.IsActive;
                IMessage? next = answer ?? requests.Continue(microseconds);
                answer = null;
                framePosition = 0;
                frameLength = next == null ? 0 : encoder.Encode(next);
            }

            if (framePosition < frameLength)
            {
                framePosition += port.Write(encoder.Frame, framePosition, frameLength - framePosition);
                busy = true;
            }

            return busy;
        }

        private bool HasArrived => PlanArrived || ClockArrived || Calibrations.Arrived;

        private bool ReadRequests(long microseconds, uint utcSeconds)
        {
            int count = port.Read(incoming, 0, incoming.Length);
            for (int i = 0; i < count; i++)
            {
                if (decoder.Accept(incoming[i]))
                {
                    // An answer not yet on its way gives way to the next: the host that asks again has stopped waiting for it.
                    answer = requests.Answer(decoder.Content, microseconds, utcSeconds) ?? answer;
                }
            }

            return count > 0;
        }
    }
}
