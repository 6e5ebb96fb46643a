using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Rules
{
    /// <summary>
    /// The full pedal of an engine that a controller holds near the hold speed: it looks like a hold at the wrong speed. It was full pedal
    /// where it was run between the same two stops as a stall, where the hold itself was run between others, and where no other speed was
    /// the governed one.
    /// </summary>
    internal static class HeldBackNaming
    {
        public static void Name(HoldRecord[] holds, int count, SpeedScale scale, Step[] names)
        {
            if (EngineRun.Has(names, 0, count, Step.Governed, Step.Relief))
            {
                return;
            }

            int highest = -1;
            for (int i = 0; i < count; i++)
            {
                bool faster = highest < 0 || SpeedScale.Speed(holds[i]) >= SpeedScale.Speed(holds[highest]);
                if (faster && !holds[i].Marked && names[i] == Step.HoldNeutral && IsFullPedal(holds, count, i, scale, names))
                {
                    highest = i;
                }
            }

            if (highest >= 0)
            {
                names[highest] = Step.Governed;
            }
        }

        private static bool IsFullPedal(HoldRecord[] holds, int count, int i, SpeedScale scale, Step[] names)
        {
            int from = EngineRun.First(holds, i);
            int to = EngineRun.End(holds, count, i);
            bool stalled = EngineRun.Has(names, from, to, Step.StallForward, Step.StallReverse)
                || EngineRun.Has(names, from, to, Step.StallInGear, Step.StallInGear);
            bool heldElsewhere = EngineRun.Has(names, 0, from, Step.HoldNeutral, Step.HoldNeutral)
                || EngineRun.Has(names, to, count, Step.HoldNeutral, Step.HoldNeutral);
            return stalled && heldElsewhere && !HasHoldInWindow(holds, from, to, scale, names);
        }

        private static bool HasHoldInWindow(HoldRecord[] holds, int from, int to, SpeedScale scale, Step[] names)
        {
            for (int i = from; i < to; i++)
            {
                if (names[i] == Step.HoldNeutral && scale.FromHold(SpeedScale.Speed(holds[i])) <= scale.HoldWindow)
                {
                    return true;
                }
            }

            return false;
        }
    }
}
