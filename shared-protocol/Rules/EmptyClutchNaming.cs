using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Rules
{
    /// <summary>
    /// Without a gear tag a clutch that never fills looks like neutral, but what runs out of its passage is missing in main pressure. A hold
    /// taken for neutral is one in gear where, at the same speed, neutral had clearly more main pressure, and had it again afterwards.
    /// </summary>
    internal sealed class EmptyClutchNaming
    {
        private const int ClearlyMorePercent = 130;
        private const int RegulatedMorePercent = 110;
        private const int SameSpeedPercent = 6;

        private readonly HoldReading _main = new HoldReading();
        private readonly HoldReading _converter = new HoldReading();
        private bool _found;

        public void Begin()
        {
            _found = false;
            _main.Present = _converter.Present = false;
        }

        /// <summary>Takes the readings without pressure, the first of each.</summary>
        public void Take(HoldRecord hold, Step name)
        {
            if (name == Step.Zero)
            {
                TakeZero(hold.Readings[Channel.Main], _main);
                TakeZero(hold.Readings[Channel.Converter], _converter);
            }
        }

        /// <summary>Idle tells first: a pump that turns slowly cannot make up for what runs out.</summary>
        public void NameIdle(HoldRecord[] holds, int count, int i, Step[] names)
        {
            if (_main.Present && names[i] == Step.IdleNeutral && CanBe(holds[i])
                && HadMore(holds, i, -1, i, names, Channel.Main, _main.SettledHundredths, ClearlyMorePercent)
                && HadMore(holds, i, i, count, names, Channel.Main, _main.SettledHundredths, ClearlyMorePercent))
            {
                names[i] = Step.IdleInGear;
                _found = true;
            }
        }

        /// <summary>The regulator holds main pressure up at speed; what it does not spill is missing in the converter.</summary>
        public void NameHold(HoldRecord[] holds, int count, int i, Step[] names)
        {
            if (_found && names[i] == Step.HoldNeutral && CanBe(holds[i])
                && (HadMore(holds, i, -1, count, names, Channel.Main, _main.SettledHundredths, RegulatedMorePercent)
                    || (_converter.Present && HadMore(holds, i, -1, count, names, Channel.Converter, _converter.SettledHundredths, ClearlyMorePercent))))
            {
                names[i] = Step.HoldInGear;
            }
        }

        /// <summary>Full pedal on a clutch that stays empty looks like relief: what runs out is missing in main, and no work pump takes that.</summary>
        public void NameStall(HoldRecord[] holds, int count, int i, Step[] names)
        {
            if (_found && names[i] == Step.Relief && CanBe(holds[i])
                && HadMore(holds, i, -1, count, names, Step.Governed, Channel.Main, _main.SettledHundredths, ClearlyMorePercent))
            {
                names[i] = Step.StallInGear;
            }
        }

        private static bool CanBe(HoldRecord hold) =>
            !hold.Marked && hold.Gear == Gear.Unknown && !hold.ClutchPressed && hold.Readings[Channel.Clutch].Present;

        private static bool HadMore(HoldRecord[] holds, int i, int after, int before, Step[] names, int channel, int zero, int morePercent) =>
            HadMore(holds, i, after, before, names, names[i], channel, zero, morePercent);

        private static bool HadMore(HoldRecord[] holds, int i, int after, int before, Step[] names, Step step, int channel, int zero, int morePercent)
        {
            for (int other = after + 1; other < before; other++)
            {
                if (other == i || names[other] != step || !holds[i].Readings[channel].Present || !holds[other].Readings[channel].Present)
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

        private static void TakeZero(HoldReading reading, HoldReading zero)
        {
            if (reading.Present && !zero.Present)
            {
                zero.CopyFrom(reading);
            }
        }
    }
}
