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
        private readonly StepNamer _namer = new StepNamer(Capacity);
        private int _count;
        private int _named;

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

        /// <summary>Names are being made.</summary>
        public bool IsNaming { get; private set; }

        /// <summary>After the last <see cref="Advance"/>: the hold that was named is one of the session's, not one that still lasts.</summary>
        public bool IsKept { get; private set; }

        /// <summary>The hold that was named last, with its name.</summary>
        public HoldRecord Named => _holds[_named];

        /// <summary>A hold that still lasts is to be named, as if it ended here. Not while names are being made.</summary>
        public void Look(HoldRecord hold, Gear gear, Step mark)
        {
            if (_count < Capacity)
            {
                IsKept = false;
                BeginNaming(hold, gear, mark);
            }
        }

        /// <summary>Keeps a copy of a hold that has ended, to be named with all others. Not while names are being made.</summary>
        public void Add(HoldRecord hold, Gear gear, Step mark)
        {
            if (hold.Readings[Channel.Speed].Present && hold.Readings[Channel.Speed].SettledHundredths == 0)
            {
                _clutch.TakeZero(hold);
            }

            if (_count == Capacity)
            {
                ForgetOldest();
            }

            IsKept = true;
            BeginNaming(hold, gear, mark);
            _count++;
        }

        /// <summary>Names some; true when all are named.</summary>
        public bool Advance()
        {
            if (!_namer.Advance())
            {
                return false;
            }

            IsNaming = false;
            Named.Step = Named.Marked ? Named.Step : _names[_named];
            if (IsKept)
            {
                TakeCaptured();
            }

            return true;
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

        private void BeginNaming(HoldRecord hold, Gear gear, Step mark)
        {
            _named = _count;
            HoldRecord copy = _holds[_named];
            copy.CopyFrom(hold);
            copy.Gear = gear;
            copy.Marked = mark != Step.None;
            copy.Step = mark;
            copy.ClutchPressed = _clutch.IsPressed(copy);
            _namer.Begin(_holds, _count + 1, _plan, _names);
            IsNaming = true;
        }

        private void TakeCaptured()
        {
            uint captured = 0;
            for (int i = 0; i < _count; i++)
            {
                captured |= 1u << (int)_names[i];
            }

            StepsCaptured = captured & ~1u;
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
    }
}
