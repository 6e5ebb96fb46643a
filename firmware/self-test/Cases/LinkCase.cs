using LoggerBox.Capture.Link;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;
using LoggerBox.SelfTest.Traces;

namespace LoggerBox.SelfTest.Cases
{
    /// <summary>Every request of the link, asked of a logger that has a session and is not recording.</summary>
    internal sealed class LinkCase : SelfTestCase
    {
        private const uint Now = 1795600000;

        private readonly CableEnd cable = new CableEnd();
        private readonly RecordedRun run = new RecordedRun(new PartedTruck(TruckTrace.DrivingDay), TruckPlan.Whole(), 20000, new MemoryStore(128 * 1024));
        private LinkAnswers link = null!;
        private long microseconds;

        public LinkCase()
            : base("link")
        {
        }

        public override void Execute()
        {
            run.ToEnd(SessionEndReason.Button);
            link = new LinkAnswers(run.Log, cable, 7, 3);
            link.Live = run.Engine.Live;
            ExpectAnswer(new Hello(), MessageCode.HelloAnswer);
            ExpectAnswer(new List(), MessageCode.SessionList);
            FetchAll();
            AskForSettings();
            Refused();
            ExpectAnswer(Confirmation(run.Log.Sessions[0], 0), MessageCode.Confirmed);
            Expect(run.Log.Sessions[0].Confirmed, "the session is not confirmed");
            Digest.AddNumber(cable.Heard.Value);
            Digest.AddNumber(cable.Frames);
        }

        private void FetchAll()
        {
            Fetch fetch = new Fetch { SessionNumber = run.Log.Sessions[0].Number, Length = 100000, PayloadLength = 300, Tag = 9, EndWanted = true };
            ExpectAnswer(fetch, MessageCode.FetchEnd);
            FetchEnd end = new FetchEnd();
            Expect(end.TryRead(cable.Content), "the end of the range could not be read");
            ExpectNumber(run.Log.Sessions[0].Length, end.Length, "bytes sent");
        }

        private void AskForSettings()
        {
            ExpectAnswer(new SetClock { UtcSeconds = Now }, MessageCode.ClockAnswer);
            Expect(link.ClockArrived && link.UtcSeconds == Now, "the time did not arrive");
            ExpectAnswer(new SendPlan(TruckPlan.Whole()), MessageCode.PlanAnswer);
            Expect(link.PlanArrived && link.Plan.GovernedTenths == 24500, "the plan did not arrive");
            SendCalibration calibration = new SendCalibration { Channel = Channel.Clutch, Kind = ChannelKind.CurrentLoop, SpanCounts = 12800, SpanPascal = 3447000, Transducer = "No 1" };
            ExpectAnswer(calibration, MessageCode.CalibrationAnswer);
            ExpectAnswer(new GetCalibration { Channel = Channel.Clutch }, MessageCode.CalibrationAnswer);
            SessionHeader header = new SessionHeader();
            link.Calibrations.CopyTo(header);
            ExpectNumber(3447000, header.Pressures[Channel.Clutch - 1].SpanPascal, "span");
            link.Calibrations.CopyFrom(TruckPlan.Header(TruckPlan.Whole(), 20000));
            ExpectAnswer(new Watch { IntervalMilliseconds = 200, ForSeconds = 2 }, MessageCode.LiveReadings);
            int before = cable.Frames;
            Work(300);
            Expect(cable.Frames - before > 5, "live readings");
        }

        private void Refused()
        {
            PlanRecord plan = TruckPlan.Whole();
            plan.StallStopMilliseconds = 90000;
            ExpectRefusal(new SendPlan(plan), RefusalReason.PlanStallTimes);
            ExpectRefusal(new Fetch { SessionNumber = 99, Length = 1, PayloadLength = 1 }, RefusalReason.NoSuchSession);
            ExpectRefusal(new GetCalibration { Channel = 9 }, RefusalReason.Malformed);
            ExpectRefusal(Confirmation(run.Log.Sessions[0], 1), RefusalReason.DoesNotAgree);
        }

        private Confirm Confirmation(LoggedSession session, uint wrong)
        {
            byte[] bytes = new byte[session.Length];
            run.Log.Read(session, 0, bytes, 0, bytes.Length);
            return new Confirm { SessionNumber = session.Number, Length = session.Length, Crc = Crc32C.Of(bytes, 0, bytes.Length) + wrong };
        }

        private void ExpectRefusal(IMessage request, RefusalReason reason)
        {
            ExpectAnswer(request, MessageCode.Refusal);
            Refusal refusal = new Refusal();
            Expect(refusal.TryRead(cable.Content), "the refusal could not be read");
            ExpectNumber((int)reason, (int)refusal.Reason, "reason");
        }

        private void ExpectAnswer(IMessage request, MessageCode code)
        {
            int before = cable.Frames;
            cable.Send(request);
            Work(1);
            while (link.Step(microseconds, Now))
            {
                microseconds += 1000;
            }

            Expect(cable.Frames > before, "no answer");
            cable.Content.Restart(0, 1);
            int heard = cable.Content.ReadByte();
            ExpectNumber((int)code, heard, "answer");
            cable.Content.Restart(1, FrameFormat.MaxContent - 1);
        }

        private void Work(int tenMilliseconds)
        {
            for (int i = 0; i < tenMilliseconds; i++)
            {
                microseconds += 10000;
                for (int step = 0; step < 20; step++)
                {
                    link.Step(microseconds, Now);
                }
            }
        }
    }
}
