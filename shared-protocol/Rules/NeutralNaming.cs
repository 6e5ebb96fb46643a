using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Rules
{
    /// <summary>
    /// Steps out of gear: zero, idle, the hold speed, governed, and relief, which follows on governed without the pedal being lifted.
    /// Steady speeds between idle and these are waiting or cooling down.
    /// </summary>
    internal static class NeutralNaming
    {
        // A pause within which the pedal was not lifted: an engine falls to idle and comes back in more.
        private const long DirectlyAfterMicroseconds = 4000000;

        // A governor that hunts parts one hold in two that differ by less than this; the work pump pulls harder.
        private const long LeastDropPerMille = 6;

        /// <summary>Names one hold, if it is out of gear.</summary>
        public static void Name(HoldRecord[] holds, int count, int i, SpeedScale scale, Step[] names)
        {
            if (!holds[i].Marked && holds[i].Readings[Channel.Speed].Present && !StepNaming.InGear(holds[i]))
            {
                names[i] = NameOne(holds, count, i, scale, names);
            }
        }

        /// <summary>What relief followed on was governed.</summary>
        public static void NameBefore(HoldRecord[] holds, int count, int i, SpeedScale scale, Step[] names)
        {
            if (i > 0 && names[i] == Step.Relief && !holds[i - 1].Marked && IsReliefAfter(holds, count, i, scale))
            {
                names[i - 1] = Step.Governed;
            }
        }

        private static Step NameOne(HoldRecord[] holds, int count, int i, SpeedScale scale, Step[] names)
        {
            int top = scale.TopInNeutral;
            HoldRecord hold = holds[i];
            int speed = SpeedScale.Speed(hold);
            if (SpeedScale.IsStopped(hold))
            {
                return Step.Zero;
            }

            if (speed < scale.IdleBelow)
            {
                return Step.IdleNeutral;
            }

            if (i > 0 && IsReliefAfter(holds, count, i, scale))
            {
                return Step.Relief;
            }

            int fromHold = scale.FromHold(speed);
            bool nearHold = fromHold <= scale.Hold / 100 * 8;
            if (nearHold && (fromHold < Distance(speed, scale.Governed) || speed * 100L < top * 92L))
            {
                return Step.HoldNeutral;
            }

            if (speed * 1000L >= top * 985L)
            {
                // A governor that hunts parts one hold in two.
                bool continues = i > 0 && names[i - 1] == Step.Governed && DirectionNaming.Continues(holds, i);
                return continues || !FullPedal.IsNotGoverned(holds, count, i, scale) ? Step.Governed : Step.None;
            }

            return speed * 100L > top * 80L && speed > scale.Hold ? Step.Relief : Step.None;
        }

        // Lower than the hold before it, which was the highest speed out of gear, and reached from there with the pedal down.
        private static bool IsReliefAfter(HoldRecord[] holds, int count, int i, SpeedScale scale)
        {
            int top = scale.TopInNeutral;
            HoldRecord before = holds[i - 1];
            HoldRecord hold = holds[i];
            long pause = hold.StartMicroseconds - before.StartMicroseconds - (before.DurationMilliseconds * 1000L);
            int high = SpeedScale.Speed(before);
            int low = SpeedScale.Speed(hold);
            bool fromThere = hold.ApproachMilliseconds == 0 || hold.ApproachFromTenths * 100L > low * 95L;
            bool slowFoot = low * 100L > high * 96L
                && scale.FromHold(high) < scale.HoldWindow && Distance(high, scale.Governed) > scale.FromHold(high);
            return !StepNaming.InGear(before) && !FullPedal.IsNotGoverned(holds, i, i - 1, scale) && pause < DirectlyAfterMicroseconds && fromThere && !slowFoot
                && high * 100L >= top * 97L && (high - low) * 1000L > high * LeastDropPerMille && low * 100L > high * 60L && low > scale.IdleBelow;
        }

        private static int Distance(int a, int b) => a > b ? a - b : b - a;
    }
}
