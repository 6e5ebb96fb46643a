using System;
using LoggerBox.Protocol.Records;
using LoggerBox.SelfTest.Traces;

namespace LoggerBox.SelfTest
{
    /// <summary>How long one sample set takes, everything included: speed, storing, holds, guards.</summary>
    internal static class SampleSetTime
    {
        public static string Measured(PartedTruck truck)
        {
            RecordedRun run = new RecordedRun(truck, TruckPlan.Whole(), 20000, new CutStore(512 * 1024));
            long before = DateTime.UtcNow.Ticks;
            run.ToEnd(SessionEndReason.Button);
            long ticks = DateTime.UtcNow.Ticks - before;
            long nanoseconds = ticks * 100 / run.Steps;
            return "time: " + (nanoseconds / 1000).ToString() + "." + (nanoseconds % 1000 / 100).ToString() + " us for each of " + run.Steps.ToString() + " sample sets";
        }
    }
}
