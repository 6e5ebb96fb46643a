using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Rules
{
    /// <summary>
    /// Without a gear tag a clutch that never fills looks like neutral, but what runs out of its passage is missing in main pressure. A hold
    /// taken for neutral is one in gear where, at the same speed, neutral had clearly more main pressure, and had it again afterwards.
    /// </summary>
    internal static class EmptyClutchNaming
    {
        private const int ClearlyMorePercent = 130;
        private const int RegulatedMorePercent = 110;
        private const int SameSpeedPercent = 6;

        public static void Name(HoldRecord[] holds, int count, Step[] names)
        {
            if (!Zero(holds, count, names, Channel.Main, out int mainZero))
            {
                return;
            }

            // Idle tells first: a pump that turns slowly cannot make up for what runs out.
            bool found = false;
            for (int i = 0; i < count; i++)
            {
                if (names[i] == Step.IdleNeutral && CanBe(holds[i])
                    && HadMore(holds, i, -1, i, names, Channel.Main, mainZero, ClearlyMorePercent)
                    && HadMore(holds, i, i, count, names, Channel.Main, mainZero, ClearlyMorePercent))
                {
                    names[i] = Step.IdleInGear;
                    found = true;
                }
            }

            if (found)
            {
                NameHolds(holds, count, names, mainZero);
            }
        }

        // The regulator holds main pressure up at speed; what it does not spill is missing in the converter.
        private static void NameHolds(HoldRecord[] holds, int count, Step[] names, int mainZero)
        {
            bool hasConverter = Zero(holds, count, names, Channel.Converter, out int converterZero);
            for (int i = 0; i < count; i++)
            {
                if (names[i] == Step.HoldNeutral && CanBe(holds[i])
                    && (HadMore(holds, i, -1, count, names, Channel.Main, mainZero, RegulatedMorePercent)
                        || (hasConverter && HadMore(holds, i, -1, count, names, Channel.Converter, converterZero, ClearlyMorePercent))))
                {
                    names[i] = Step.HoldInGear;
                }
            }
        }

        private static bool CanBe(HoldRecord hold) =>
            !hold.Marked && hold.Gear == Gear.Unknown && !hold.ClutchPressed && hold.Readings[Channel.Clutch].Present;

        private static bool HadMore(HoldRecord[] holds, int i, int after, int before, Step[] names, int channel, int zero, int morePercent)
        {
            for (int other = after + 1; other < before; other++)
            {
                if (other == i || names[other] != names[i] || !holds[i].Readings[channel].Present || !holds[other].Readings[channel].Present)
                {
                    continue;
                }

                long here = holds[i].Readings[channel].SettledHundredths - zero;
                long there = holds[other].Readings[channel].SettledHundredths - zero;
                if (SameSpeed(holds[i], holds[other]) && there * 100 > here * morePercent)
                {
                    return true;
                }
            }

            return false;
        }

        private static bool SameSpeed(HoldRecord one, HoldRecord other)
        {
            int difference = SpeedScale.Speed(one) - SpeedScale.Speed(other);
            return (difference < 0 ? -difference : difference) * 100L < SpeedScale.Speed(one) * (long)SameSpeedPercent;
        }

        // The reading without pressure.
        private static bool Zero(HoldRecord[] holds, int count, Step[] names, int channel, out int zero)
        {
            for (int i = 0; i < count; i++)
            {
                if (names[i] == Step.Zero && holds[i].Readings[channel].Present)
                {
                    zero = holds[i].Readings[channel].SettledHundredths;
                    return true;
                }
            }

            zero = 0;
            return false;
        }
    }
}
