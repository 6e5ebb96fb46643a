using LoggerBox.Protocol.Records;
using LoggerBox.SelfTest.Traces;

namespace LoggerBox.SelfTest.Cases
{
    /// <summary>Sample sets with times of their own, as of another instrument's recording.</summary>
    internal sealed class UnevenCase : CaptureCase
    {
        public UnevenCase()
            : base("uneven times")
        {
        }

        public override void Execute()
        {
            RecordedRun run = new RecordedRun(new PartedTruck(TruckTrace.FaultyRun), TruckPlan.Whole(), 0, new CutStore(512 * 1024));
            run.ToEnd(SessionEndReason.EndOfRecording);
            ReadBack(run);
            Expect(Count(RecordCode.Dropout) > 0, "dropouts");
        }
    }
}
