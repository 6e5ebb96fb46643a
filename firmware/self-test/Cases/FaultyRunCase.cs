using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;
using LoggerBox.SelfTest.Traces;

namespace LoggerBox.SelfTest.Cases
{
    /// <summary>Everything that can go wrong in a session: loops, late and missing polls, spikes, limits that are passed.</summary>
    internal sealed class FaultyRunCase : CaptureCase
    {
        private readonly PartedTruck truck = new PartedTruck(TruckTrace.FaultyRun);

        public FaultyRunCase()
            : base("faulty run")
        {
        }

        public override void Execute()
        {
            RecordedRun run = new RecordedRun(truck, TruckPlan.Whole(), 10000, new CutStore(512 * 1024));
            run.Step();
            run.Engine.Note(EventKind.Button, 1, run.Now);
            run.Engine.Tell(Cue.Armed, run.Now);
            run.Engine.StoreNow();
            run.ToEnd(SessionEndReason.LowSupply);
            ReadBack(run);
            Expect(Count(RecordCode.Dropout) > 5, "dropouts");
            Expect(Count(RecordCode.Event) > 30, "events");
            Expect(truck.Cues > 15, "cues");
        }
    }
}
