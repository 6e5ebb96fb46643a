using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Guards
{
    /// <summary>
    /// The clock of the relief step: full pedal in neutral, governed speed drops by what the plan says, and hot oil goes over the relief
    /// valve until the lever is released. Without the plan's governed speed and drop it has nothing to say.
    /// </summary>
    public sealed class ReliefGuard
    {
        private const int BinsUntilStop = SeatTimes.ReliefStopMilliseconds * 1000 / Bin.Microseconds;

        // A lever is pulled within a moment of full speed; what comes down slower is a foot.
        private const int BinsSinceGoverned = 15;

        private readonly int _governedTenths;
        private readonly int _lowestTenths;
        private int _sinceGoverned = BinsSinceGoverned + 1;
        private int _held;

        public ReliefGuard(PlanRecord plan)
        {
            bool isKnown = plan.GovernedTenths > 0 && plan.ReliefDropMinTenths > 0 && plan.ReliefDropMaxTenths > 0;
            _governedTenths = isKnown ? plan.GovernedTenths - (plan.ReliefDropMinTenths / 2) : int.MaxValue;
            _lowestTenths = isKnown ? plan.GovernedTenths - (2 * plan.ReliefDropMaxTenths) : int.MaxValue;
        }

        /// <summary>Looks at a tenth of a second; the cue once for each time that the lever is held too long.</summary>
        public Cue Watch(Gear gear, int speedTenths)
        {
            bool isNeutral = gear == Gear.Neutral || gear == Gear.Unknown;
            bool isBetween = isNeutral && speedTenths != SampleSet.Missing && speedTenths < _governedTenths && speedTenths > _lowestTenths;
            bool isGoverned = isNeutral && speedTenths != SampleSet.Missing && speedTenths >= _governedTenths;
            _sinceGoverned = isGoverned ? 0 : _sinceGoverned > BinsSinceGoverned ? _sinceGoverned : _sinceGoverned + 1;
            bool continues = _held > 0 || _sinceGoverned <= BinsSinceGoverned;
            _held = isBetween && continues ? _held + 1 : 0;
            return _held == BinsUntilStop ? Cue.ReliefStop : Cue.None;
        }
    }
}
