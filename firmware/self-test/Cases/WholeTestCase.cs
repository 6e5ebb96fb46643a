using LoggerBox.Protocol.Records;
using LoggerBox.SelfTest.Traces;

namespace LoggerBox.SelfTest.Cases
{
    /// <summary>A sound truck, every step of the test once.</summary>
    internal sealed class WholeTestCase : CaptureCase
    {
        private const uint AllSteps = 0xFFE;

        public WholeTestCase()
            : base("whole test")
        {
        }

        public override void Execute()
        {
            RecordedRun run = new RecordedRun(new PartedTruck(TruckTrace.WholeTest), TruckPlan.Whole(), 20000, new CutStore(512 * 1024));
            run.ToEnd(SessionEndReason.Button);
            ReadBack(run);
            ExpectNumber(AllSteps, Steps & AllSteps, "steps");
            ExpectNumber(0, run.Engine.StepsMissing, "steps missing");
            Expect(Count(RecordCode.Engagement) >= 4, "engagements");
            Expect(Count(RecordCode.RunUp) >= 3, "run-ups");
            ExpectNumber(0, Count(RecordCode.Dropout), "dropouts");
        }
    }
}
