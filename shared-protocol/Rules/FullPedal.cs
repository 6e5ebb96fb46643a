using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Rules
{
    /// <summary>
    /// What full pedal looks like: the speed comes up from idle in one go and stands for seconds. A foot that creeps up to a speed, and one
    /// that stays there to warm the oil or to let it cool, do something else. Asked only where the speed itself does not tell, far below what
    /// the plan expects: there a faulty truck and half a pedal stand alike.
    /// </summary>
    internal static class FullPedal
    {
        // A pedal on the floor takes an engine from idle to its stall in a second or so, a weak one in two (common practice, no source).
        private const int LongestWayMilliseconds = 3000;

        private const long DriveOffMicroseconds = 10000000;

        private const int FarBelowStallPercent = 88;
        private const int FarBelowGovernedPercent = 80;

        /// <summary>Too far below the plan's stall for thin air or a warm day, or no stall is planned, and not made like one.</summary>
        public static bool IsNoStall(HoldRecord[] holds, int count, int i, SpeedScale scale) =>
            (IsFarBelowStall(holds[i], scale) || scale.Stall(holds[i].Gear) == 0) && !IsMadeLikeIt(holds, count, i, scale);

        public static bool IsFarBelowStall(HoldRecord hold, SpeedScale scale) =>
            SpeedScale.Speed(hold) * 100L < (long)scale.Stall(hold.Gear) * FarBelowStallPercent;

        /// <summary>The same without load: there an engine is never slower than under load.</summary>
        public static bool IsNotGoverned(HoldRecord[] holds, int count, int i, SpeedScale scale)
        {
            int speed = SpeedScale.Speed(holds[i]);
            return speed * 100L < (long)scale.Governed * FarBelowGovernedPercent
                && (scale.WasFaster(speed) || !IsMadeLikeIt(holds, count, i, scale) || IsDrivenOff(holds, count, i));
        }

        /// <summary>Came up from idle in one go, and lasted no longer than full pedal may.</summary>
        public static bool IsMadeLikeIt(HoldRecord[] holds, int count, int i, SpeedScale scale)
        {
            HoldRecord first = holds[i];
            long end = End(first);
            for (int next = i + 1; next < count && DirectionNaming.Continues(holds, next); next++)
            {
                end = End(holds[next]);
            }

            return first.ApproachMilliseconds > 0
                && first.ApproachMilliseconds <= LongestWayMilliseconds
                && first.ApproachFromTenths * 100L < SpeedScale.Speed(first) * 80L
                && end - first.StartMicroseconds <= scale.LongestFullPedalMilliseconds * 1000L;
        }

        // Nobody puts a gear in with the pedal on the floor: what went on in gear at the same speed was a fast idle.
        private static bool IsDrivenOff(HoldRecord[] holds, int count, int i) =>
            i + 1 < count && StepNaming.InGear(holds[i + 1])
            && holds[i + 1].StartMicroseconds - End(holds[i]) < DriveOffMicroseconds
            && SpeedScale.Speed(holds[i + 1]) * 100L > SpeedScale.Speed(holds[i]) * 94L;

        private static long End(HoldRecord hold) => hold.StartMicroseconds + (hold.DurationMilliseconds * 1000L);
    }
}
