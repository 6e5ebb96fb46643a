using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Guards
{
    /// <summary>
    /// Tells more or less pedal while a hold step is tried. In gear only after the operator said that the wheels are clear: a stall lies
    /// close to the hold speed, and nobody is told to press harder in a stall.
    /// </summary>
    public sealed class HoldWindow
    {
        // Near enough that the hold speed is meant: governed and relief speeds lie further up.
        private const int NearPercent = 8;

        // A run-up passes through in less.
        private const int BinsUntilSaid = 8;

        private readonly int _middle;
        private readonly int _half;
        private Cue _seen;
        private Cue _said;
        private int _bins;

        public HoldWindow(PlanRecord plan)
        {
            _middle = plan.HoldTenths;
            _half = plan.HoldWindowTenths;
        }

        /// <summary>The cue that is due, once for each way out of the window.</summary>
        public Cue Watch(Gear gear, Step mark, int speedTenths)
        {
            Cue cue = WayOut(gear, mark, speedTenths);
            _bins = cue == _seen ? _bins + 1 : 0;
            _seen = cue;
            if (cue == Cue.None)
            {
                _said = Cue.None;
            }

            if (_bins < BinsUntilSaid || cue == _said)
            {
                return Cue.None;
            }

            _said = cue;
            return cue;
        }

        /// <summary>What leads back into the window; None inside it, far from it, and where no hold is meant.</summary>
        public Cue WayOut(Gear gear, Step mark, int speedTenths)
        {
            bool meant = gear == Gear.Neutral || mark == Step.HoldNeutral || mark == Step.HoldForward || mark == Step.HoldReverse;
            if (!meant || _middle <= 0 || _half <= 0 || speedTenths == SampleSet.Missing)
            {
                return Cue.None;
            }

            int off = speedTenths - _middle;
            bool near = IntegerMath.Abs(off) <= _middle / 100 * NearPercent;
            return !near || IntegerMath.Abs(off) <= _half ? Cue.None : off < 0 ? Cue.SpeedHigher : Cue.SpeedLower;
        }
    }
}
