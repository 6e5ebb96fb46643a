using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.SelfTest.Cases
{
    /// <summary>Every message of the link through a frame and back.</summary>
    internal sealed class MessageCase : SelfTestCase
    {
        private const int Bodies = 18;
        private const int BodyLength = 220;

        private readonly byte[] body = new byte[BodyLength];
        private readonly Noise noise = new Noise(11);
        private readonly FrameEncoder encoder = new FrameEncoder();
        private readonly FrameEncoder again = new FrameEncoder();
        private readonly FrameDecoder decoder = new FrameDecoder();

        public MessageCase()
            : base("messages")
        {
        }

        public override void Execute()
        {
            Repeat(new Hello(), new Hello());
            Repeat(new HelloAnswer(), new HelloAnswer());
            Repeat(new List(), new List());
            Repeat(new Fetch(), new Fetch());
            Repeat(new FetchEnd(), new FetchEnd());
            Repeat(new Data(), new Data());
            Repeat(new Confirm(), new Confirm());
            Repeat(new Confirmed(), new Confirmed());
            Repeat(new SendPlan(new PlanRecord()), new SendPlan(new PlanRecord()));
            Repeat(new PlanAnswer(), new PlanAnswer());
            Repeat(new SetClock(), new SetClock());
            Repeat(new ClockAnswer(), new ClockAnswer());
            Repeat(new Watch(), new Watch());
            Repeat(new LiveReadings(), new LiveReadings());
            Repeat(new SendCalibration(), new SendCalibration());
            Repeat(new GetCalibration(), new GetCalibration());
            Repeat(new CalibrationAnswer(), new CalibrationAnswer());
            Repeat(new SessionList(), new SessionList());
            Repeat(new Refusal(), new Refusal());
        }

        private void Repeat(IMessage message, IMessage other)
        {
            int read = 0;
            ByteReader reader = new ByteReader(body);
            for (int n = 0; n < Bodies; n++)
            {
                noise.Fill(body, BodyLength, n % 2 == 0 ? 0xFF : 0x03);
                reader.Restart(0, BodyLength);
                if (!message.TryRead(reader))
                {
                    continue;
                }

                read++;
                int length = encoder.Encode(message);
                Expect(Arrives(length) && decoder.Content.ReadByte() == (byte)message.Code, "the frame did not arrive");
                Expect(other.TryRead(decoder.Content), "the message could not be read");
                ExpectNumber(length, again.Encode(other), "length");
                for (int i = 0; i < length; i++)
                {
                    Expect(encoder.Frame[i] == again.Frame[i], "another byte was sent");
                }

                Digest.Add(encoder.Frame, 0, length);
            }

            Expect(read > 0, "no body could be read");
        }

        private bool Arrives(int length)
        {
            bool complete = false;
            for (int i = 0; i < length; i++)
            {
                complete = decoder.Accept(encoder.Frame[i]);
            }

            return complete;
        }
    }
}
