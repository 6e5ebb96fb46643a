using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Rules
{
    /// <summary>
    /// Steps in gear. Idle is plain; hold and stall may lie at the same speed (a stall of 1950 beside a hold at 2000), and are then told
    /// apart by how the speed came: a foot that looks for a speed goes past it and comes back, a stalled engine comes up to its speed from below;
    /// and by the set-up: wheels clear for holds, truck down for stalls and full pedal, the engine off in between. Warming up or driving in gear
    /// is neither.
    /// </summary>
    internal static class DirectionNaming
    {
        private const long PauseMicroseconds = 2000000;

        /// <summary>Names one hold, if it is in gear; those before it are named.</summary>
        public static void Name(HoldRecord[] holds, int count, int i, SpeedScale scale, Step[] names, SetUps setUps)
        {
            HoldRecord hold = holds[i];
            setUps.GovernedSeen |= names[i] == Step.Governed || names[i] == Step.Relief;
            if (hold.Marked || !hold.Readings[Channel.Speed].Present || !StepNaming.InGear(hold) || SpeedScale.IsStopped(hold))
            {
                return;
            }

            if (SpeedScale.Speed(hold) < scale.IdleBelow && !IsStallThatLow(hold, scale))
            {
                names[i] = StepNaming.InGearStep(hold.Gear, Step.IdleForward, Step.IdleReverse, Step.IdleInGear);
            }
            else if (Continues(holds, i))
            {
                names[i] = names[i - 1];
            }
            else if (setUps.Evidence(i) + StallEvidence(holds, count, i, scale) <= 0)
            {
                names[i] = StepNaming.InGearStep(hold.Gear, Step.HoldForward, Step.HoldReverse, Step.HoldInGear);
            }
            else if (!FullPedal.IsNoStall(holds, count, i, scale))
            {
                names[i] = StepNaming.InGearStep(hold.Gear, Step.StallForward, Step.StallReverse, Step.StallInGear);
            }
        }

        // A foot that wanders parts one hold in two: what it was when it came up to speed, it still is.
        public static bool Continues(HoldRecord[] holds, int i)
        {
            if (i == 0 || holds[i - 1].Marked || holds[i].Gear != holds[i - 1].Gear)
            {
                return false;
            }

            HoldRecord before = holds[i - 1];
            long pause = holds[i].StartMicroseconds - before.StartMicroseconds - (before.DurationMilliseconds * 1000L);
            int speed = SpeedScale.Speed(before);
            return pause < PauseMicroseconds && PerMille(SpeedScale.Speed(holds[i]) - speed, speed) < 60;
        }

        // A stator that slips lets a low-stalling truck stall not far above idle: then it came up from idle all the same.
        private static bool IsStallThatLow(HoldRecord hold, SpeedScale scale) =>
            hold.ApproachMilliseconds > 0 && hold.ApproachFromTenths * 100L < SpeedScale.Speed(hold) * 80L
            && SpeedScale.Speed(hold) * 100L > scale.IdleBelow * 90L;

        /// <summary>Above 0: rather a stall; below: rather a hold. Per mille of speed, so that all the evidence adds.</summary>
        public static int StallEvidence(HoldRecord[] holds, int count, int i, SpeedScale scale)
        {
            // The longest of the parts says best where the speed came to stand.
            HoldRecord hold = holds[i];
            for (int next = i + 1; next < count && Continues(holds, next); next++)
            {
                hold = holds[next].DurationMilliseconds > hold.DurationMilliseconds ? holds[next] : hold;
            }

            int speed = SpeedScale.Speed(hold);
            int offHold = PerMille(scale.FromHold(speed), scale.Hold);
            int stall = scale.Stall(hold.Gear);
            int offStall = stall > 0 ? PerMille(speed - stall, stall) : 100;
            int evidence = (offHold > 200 ? 200 : offHold) - 50;
            evidence += offStall < 70 ? 20 : 0;
            evidence += Overshoot(holds[i], speed) > 12 ? -40 : 25;
            return evidence;
        }

        private static int Overshoot(HoldRecord first, int settled) =>
            settled <= 0 ? 0 : PerMille(first.Readings[Channel.Speed].Peak - settled, settled);

        public static int PerMille(int difference, int of)
        {
            int magnitude = difference < 0 ? -difference : difference;
            return of <= 0 ? 1000 : (int)(magnitude * 1000L / of);
        }
    }
}
