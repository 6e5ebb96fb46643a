using LoggerBox.Protocol.Records;
using LoggerBox.SelfTest.Traces;

namespace LoggerBox.SelfTest.Cases
{
    /// <summary>Normal work without a plan, longer than a session keeps holds in mind.</summary>
    internal sealed class DrivingDayCase : CaptureCase
    {
        private const int Minutes = 8;

        public DrivingDayCase()
            : base("driving day")
        {
        }

        public override void Execute()
        {
            PartedTruck truck = new PartedTruck(TruckTrace.DrivingDay) { GoesRound = true };
            PlanRecord plan = new PlanRecord();
            plan.PickupRevolutions = 2;
            RecordedRun run = new RecordedRun(truck, plan, 20000, new CutStore(512 * 1024));
            while (run.Now < Minutes * 60000000L)
            {
                run.Step();
            }

            run.Engine.End(SessionEndReason.Button, run.Now);
            ReadBack(run);
            Expect(Count(RecordCode.Hold) > 72, "holds");
        }
    }
}
