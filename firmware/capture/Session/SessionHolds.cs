using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Session
{
    /// <summary>The holds of the running session, named again from all of them whenever one is added.</summary>
    public sealed class SessionHolds
    {
        // Twice the steps of a test done three times over; a day's driving keeps the latest.
        private const int Capacity = 72;

        // All eleven steps, zero to hold-R.
        private const uint WholeTest = 0xFFE;

        private readonly HoldRecord[] _holds = new HoldRecord[Capacity];
        private readonly Step[] _names = new Step[Capacity];
        private readonly PlanRecord _plan;
        private readonly ClutchPressure _clutch;
        private int _count;

        public SessionHolds(PlanRecord plan, SessionHeader header)
        {
            _plan = plan;
            _clutch = new ClutchPressure(header);
            for (int i = 0; i < Capacity; i++)
            {
                _holds[i] = new HoldRecord();
            }
        }

        /// <summary>Bit n: step n was captured.</summary>
        public uint StepsCaptured { get; private set; }

        public bool IsWholeTest => (StepsCaptured & WholeTest) == WholeTest;

        /// <summary>What this hold would be if it were added now.</summary>
        public Step Name(HoldRecord hold, Gear gear, Step mark)
        {
            if (mark != Step.None || _count == Capacity)
            {
                return mark;
            }

            hold.Gear = gear;
            hold.Marked = false;
            hold.Step = Step.None;
            hold.ClutchPressed = _clutch.IsPressed(hold);
            _holds[_count].CopyFrom(hold);
            StepNaming.Name(_holds, _count + 1, _plan, _names);
            return _names[_count];
        }

        /// <summary>Steps of a whole test that were not captured yet.</summary>
        public int StepsMissing
        {
            get
            {
                int count = 0;
                for (uint left = WholeTest & ~StepsCaptured; left != 0; left &= left - 1)
                {
                    count++;
                }

                return count;
            }
        }

        /// <summary>Completes the record with gear, mark and name, and keeps a copy.</summary>
        public void Add(HoldRecord hold, Gear gear, Step mark)
        {
            hold.Gear = gear;
            hold.Marked = mark != Step.None;
            hold.Step = mark;
            if (SpeedIsZero(hold))
            {
                _clutch.TakeZero(hold);
            }

            hold.ClutchPressed = _clutch.IsPressed(hold);
            if (_count == Capacity)
            {
                ForgetOldest();
            }

            _holds[_count++].CopyFrom(hold);
            StepNaming.Name(_holds, _count, _plan, _names);
            hold.Step = _names[_count - 1];
            StepsCaptured = 0;
            for (int i = 0; i < _count; i++)
            {
                StepsCaptured |= 1u << (int)_names[i];
            }

            StepsCaptured &= ~1u;
        }

        /// <summary>Full pedal in this gear, and the clutch that held pressure at idle has none: something cuts the drive.</summary>
        public bool IsDriveCut(HoldRecord hold)
        {
            if (hold.ClutchPressed || !hold.Readings[Channel.Clutch].Present || (hold.Gear != Gear.Forward && hold.Gear != Gear.Reverse))
            {
                return false;
            }

            for (int i = 0; i < _count; i++)
            {
                bool slower = _holds[i].Readings[Channel.Speed].SettledHundredths * 3L < hold.Readings[Channel.Speed].SettledHundredths * 2L;
                if (_holds[i].Gear == hold.Gear && _holds[i].ClutchPressed && slower)
                {
                    return true;
                }
            }

            return false;
        }

        private void ForgetOldest()
        {
            HoldRecord oldest = _holds[0];
            for (int i = 1; i < Capacity; i++)
            {
                _holds[i - 1] = _holds[i];
            }

            _holds[Capacity - 1] = oldest;
            _count--;
        }

        private static bool SpeedIsZero(HoldRecord hold) =>
            hold.Readings[Channel.Speed].Present && hold.Readings[Channel.Speed].SettledHundredths == 0;
    }
}
