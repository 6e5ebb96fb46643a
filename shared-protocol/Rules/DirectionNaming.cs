using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Rules
{
    /// <summary>
    /// Steps in gear. Idle is plain; hold and stall may lie at the same speed (a stall of 1950 beside a hold at 2000), and are then told
    /// apart by how the speed came: a foot that looks for a speed goes past it and comes back, a stalled engine comes up to its speed from below;
    /// and by the set-up: wheels clear for holds, truck down for stalls and full pedal, the engine off in between.
    /// </summary>
    internal static class DirectionNaming
    {
        private const long PauseMicroseconds = 2000000;

        /// <summary>Weight of the set-up in per mille of speed: as much as a tenth of the speed.</summary>
        private const int SetUpEvidence = 90;

        private const int GovernedSeenEvidence = 15;

        public static void Name(HoldRecord[] holds, int count, SpeedScale scale, Step[] names)
        {
            bool governedSeen = false;
            for (int i = 0; i < count; i++)
            {
                HoldRecord hold = holds[i];
                governedSeen |= names[i] == Step.Governed || names[i] == Step.Relief;
                if (hold.Marked || !hold.Readings[Channel.Speed].Present || !StepNaming.InGear(hold) || SpeedScale.IsStopped(hold))
                {
                    continue;
                }

                if (SpeedScale.Speed(hold) < scale.IdleBelow && !IsStallThatLow(hold, scale))
                {
                    names[i] = StepNaming.InGearStep(hold.Gear, Step.IdleForward, Step.IdleReverse, Step.IdleInGear);
                    continue;
                }

                if (Continues(holds, i))
                {
                    names[i] = names[i - 1];
                    continue;
                }

                int setUp = SetUp(holds, count, i, scale, names, governedSeen);
                names[i] = setUp + StallEvidence(holds, count, i, scale) > 0
                    ? StepNaming.InGearStep(hold.Gear, Step.StallForward, Step.StallReverse, Step.StallInGear)
                    : StepNaming.InGearStep(hold.Gear, Step.HoldForward, Step.HoldReverse, Step.HoldInGear);
            }

            PartTwins(holds, count, scale, names, Step.HoldForward, Step.StallForward);
            PartTwins(holds, count, scale, names, Step.HoldReverse, Step.StallReverse);
        }

        // A foot that wanders parts one hold in two: what it was when it came up to speed, it still is.
        private static bool Continues(HoldRecord[] holds, int i)
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

        /// <summary>
        /// Where the engine was off in between, what was done between the same two stops tells the set-up; else holds mostly come before
        /// full pedal and stalls after it.
        /// </summary>
        private static int SetUp(HoldRecord[] holds, int count, int i, SpeedScale scale, Step[] names, bool governedSeen)
        {
            int from = EngineRun.First(holds, i);
            int to = EngineRun.End(holds, count, i);
            bool fullPedal = EngineRun.Has(names, from, to, Step.Governed, Step.Relief);
            bool heldInNeutral = EngineRun.Has(names, from, to, Step.HoldNeutral, Step.HoldNeutral);
            if (fullPedal && !heldInNeutral && RunsInGearElsewhere(holds, count, from, to, scale))
            {
                return SetUpEvidence;
            }

            if (heldInNeutral && !fullPedal && EngineRun.Has(names, 0, count, Step.Governed, Step.Relief))
            {
                return -SetUpEvidence;
            }

            return governedSeen ? GovernedSeenEvidence : -GovernedSeenEvidence;
        }

        // Above idle in a direction, before the engine was stopped or after it: the other set-up had its turn there.
        private static bool RunsInGearElsewhere(HoldRecord[] holds, int count, int from, int to, SpeedScale scale)
        {
            for (int i = 0; i < count; i++)
            {
                bool elsewhere = i < from || i >= to;
                if (elsewhere && StepNaming.InGear(holds[i]) && SpeedScale.Speed(holds[i]) > scale.IdleBelow)
                {
                    return true;
                }
            }

            return false;
        }

        /// <summary>Above 0: rather a stall; below: rather a hold. Per mille of speed, so that all the evidence adds.</summary>
        private static int StallEvidence(HoldRecord[] holds, int count, int i, SpeedScale scale)
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

        // Two or more of one gear, all called the same: the one that looks most like the other step is the other step.
        private static void PartTwins(HoldRecord[] holds, int count, SpeedScale scale, Step[] names, Step holdStep, Step stallStep)
        {
            int holdsFound = 0, stallsFound = 0, stallLike = -1, holdLike = -1, most = 0, least = 0;
            for (int i = 0; i < count; i++)
            {
                if (holds[i].Marked || Continues(holds, i) || (names[i] != holdStep && names[i] != stallStep))
                {
                    continue;
                }

                int evidence = StallEvidence(holds, count, i, scale);
                holdsFound += names[i] == holdStep ? 1 : 0;
                stallsFound += names[i] == stallStep ? 1 : 0;
                bool mayBeStall = SetUp(holds, count, i, scale, names, true) > -SetUpEvidence;
                if (mayBeStall && (stallLike < 0 || evidence > most))
                {
                    stallLike = i;
                    most = evidence;
                }

                if (holdLike < 0 || evidence < least)
                {
                    holdLike = i;
                    least = evidence;
                }
            }

            if (stallLike < 0 || most - least < 30)
            {
                return;
            }

            if (stallsFound == 0)
            {
                Rename(holds, count, stallLike, stallStep, names);
            }
            else if (holdsFound == 0 && PerMille(scale.FromHold(SpeedScale.Speed(holds[holdLike])), scale.Hold) < 100)
            {
                Rename(holds, count, holdLike, holdStep, names);
            }
        }

        private static void Rename(HoldRecord[] holds, int count, int first, Step name, Step[] names)
        {
            names[first] = name;
            for (int i = first + 1; i < count && Continues(holds, i); i++)
            {
                names[i] = name;
            }
        }

        private static int Overshoot(HoldRecord first, int settled) =>
            settled <= 0 ? 0 : PerMille(first.Readings[Channel.Speed].Peak - settled, settled);

        private static int PerMille(int difference, int of)
        {
            int magnitude = difference < 0 ? -difference : difference;
            return of <= 0 ? 1000 : (int)(magnitude * 1000L / of);
        }
    }
}
