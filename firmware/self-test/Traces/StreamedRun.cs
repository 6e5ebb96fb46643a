using LoggerBox.Capture.Link;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.SelfTest.Traces
{
    /// <summary>A recorded session that is fetched over the cable, one step of the link at a time.</summary>
    internal sealed class StreamedRun
    {
        private readonly CableEnd cable = new CableEnd { TakenAtOnce = 2048 };
        private readonly LinkAnswers link;
        private long now;

        public StreamedRun()
        {
            RecordedRun run = new RecordedRun(new PartedTruck(TruckTrace.WholeTest), TruckPlan.Whole(), 20000, new CutStore(512 * 1024));
            run.ToEnd(SessionEndReason.Button);
            link = new LinkAnswers(run.Log, cable, 7, 3);
            Bytes = (int)run.Log.Sessions[0].Length;
            cable.Send(new Fetch { SessionNumber = run.Log.Sessions[0].Number, Length = (uint)Bytes, PayloadLength = Data.MaxPayload, EndWanted = true });
        }

        /// <summary>Length of the session.</summary>
        public int Bytes { get; }

        /// <summary>At most one frame; false when nothing was left to do.</summary>
        public bool Step()
        {
            now += 10000;
            return link.Step(now, 0);
        }
    }
}
