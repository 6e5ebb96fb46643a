using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Rules
{
    /// <summary>
    /// Low stalls beside good ones: an engine and a converter that stalled where the plan says do not stall far lower in the same session.
    /// Where as many stood there as stood low, the low ones were half a pedal, whichever came last.
    /// </summary>
    internal sealed class PartPedalNaming
    {
        private const int AboveStallPerMille = 60;

        private int _asPlanned;
        private int _low;

        public void Begin()
        {
            _asPlanned = _low = 0;
        }

        /// <summary>Each hold in turn, with its name.</summary>
        public void Take(HoldRecord[] holds, int count, int i, SpeedScale scale, Step name)
        {
            if (!IsStall(name) || (i > 0 && DirectionNaming.Continues(holds, i)))
            {
                return;
            }

            HoldRecord hold = holds[i];
            bool low = FullPedal.IsFarBelowStall(hold, scale);
            _low += low ? 1 : 0;
            _asPlanned += !low && IsNoneTooHigh(hold, scale) && FullPedal.IsMadeLikeIt(holds, count, i, scale) ? 1 : 0;
        }

        /// <summary>When all were taken: half a pedal that was taken for a stall.</summary>
        public bool IsHalfAPedal(HoldRecord hold, Step name, SpeedScale scale) =>
            _low > 0 && _asPlanned >= _low && !hold.Marked && IsStall(name) && FullPedal.IsFarBelowStall(hold, scale);

        // A clutch that slips lets it stand higher: that says nothing of how low it can be.
        private static bool IsNoneTooHigh(HoldRecord hold, SpeedScale scale)
        {
            int stall = scale.Stall(hold.Gear);
            return SpeedScale.Speed(hold) * 1000L < (long)stall * (1000 + AboveStallPerMille);
        }

        private static bool IsStall(Step name) => name == Step.StallForward || name == Step.StallReverse || name == Step.StallInGear;
    }
}
