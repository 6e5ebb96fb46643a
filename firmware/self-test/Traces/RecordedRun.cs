using LoggerBox.Capture;
using LoggerBox.Capture.Storage;
using LoggerBox.Protocol.Records;

namespace LoggerBox.SelfTest.Traces
{
    /// <summary>One session of the whole logger: a truck through the capture engine into a log in memory.</summary>
    internal sealed class RecordedRun
    {
        private const int LateMicroseconds = 60000;
        private const int SilentMicroseconds = 1300000;

        public readonly RecordLog Log;
        public readonly CaptureEngine Engine;

        private readonly PartedTruck truck;
        private readonly uint interval;
        private bool wasSilent;
        private bool hasWaited;
        private long now;

        public RecordedRun(PartedTruck truck, PlanRecord plan, uint intervalMicroseconds, IRecordStore store)
        {
            this.truck = truck;
            interval = intervalMicroseconds == 0 ? 20000 : intervalMicroseconds;
            Log = new RecordLog(store);
            Log.Open();
            Engine = new CaptureEngine(truck, Log, plan, TruckPlan.Header(plan, intervalMicroseconds));
            Engine.Begin(interval);
        }

        public int Steps { get; private set; }

        /// <summary>The moment of the last step, microseconds since the truck began.</summary>
        public long Now => now;

        /// <summary>Lets the time to the next set pass but for the last poll: of a time without sets, its polls.</summary>
        public void Wait()
        {
            hasWaited = true;
            now += interval;
            if (truck.Is(TruckTrace.Late) && Steps % 20 == 0)
            {
                now += LateMicroseconds;
            }

            if (truck.Is(TruckTrace.Silent) && !wasSilent)
            {
                wasSilent = true;
                now += SilentMicroseconds;
            }

            truck.RunTo(now - truck.PollMicroseconds);
        }

        /// <summary>One sample set. False once the truck's table is at its end.</summary>
        public bool Step()
        {
            if (!hasWaited)
            {
                Wait();
            }

            hasWaited = false;
            truck.RunTo(now);
            Engine.Step(now);
            Steps++;
            return !truck.IsOver;
        }

        public void ToEnd(SessionEndReason reason)
        {
            while (Step())
            {
            }

            Engine.End(reason, now);
        }
    }
}
