using LoggerBox.Capture.Guards;
using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.Capture.Session
{
    /// <summary>What the person in the seat is told about a hold: captured, close to a limit, or do it again and why.</summary>
    public sealed class CaptureCues
    {
        // Half a second of standing still was meant to be a reading; less is a coincidence.
        private const int BinsMeant = 5;

        private readonly HoldWindow _window;
        private readonly StallLimits _limits;
        private readonly PlanRecord _plan;
        private readonly ChannelCalibration _main;
        private uint _borderlineSaid;

        public CaptureCues(PlanRecord plan, SessionHeader header, HoldWindow window)
        {
            _plan = plan;
            _main = header.Pressures[Channel.Main - 1];
            _window = window;
            _limits = new StallLimits(plan);
        }

        /// <summary>A hold has stood long enough: the operator may let go.</summary>
        public Cue Captured(Gear gear, Step mark, int speedTenths)
        {
            return speedTenths == 0 ? Cue.ZeroTaken
                : _window.WayOut(gear, mark, speedTenths) != Cue.None ? Cue.NotCapturedSpeed
                : Cue.Captured;
        }

        /// <summary>Line pressure of the captured hold lies within its instrument's error of a limit: said once for each gear and speed.</summary>
        public Cue Borderline(Gear gear, int speedTenths, int mainCounts)
        {
            bool atHold = _plan.HoldTenths > 0 && IntegerMath.Abs(speedTenths - _plan.HoldTenths) <= _plan.HoldWindowTenths;
            bool atIdle = speedTenths > 0 && speedTenths <= _limits.PedalTenths;
            uint bit = 1u << ((int)gear + (atHold ? 8 : 0));
            if ((!atHold && !atIdle) || _main.Kind == ChannelKind.None || _main.AccuracyPascal <= 0 || (_borderlineSaid & bit) != 0)
            {
                return Cue.None;
            }

            int pascal = _main.PascalFromCounts(mainCounts);
            bool close = atHold ? IsClose(pascal, _plan.MainHoldMinPascal) || IsClose(pascal, _plan.MainHoldMaxPascal) : IsClose(pascal, _plan.MainIdleMinPascal);
            _borderlineSaid |= close ? bit : 0;
            return close ? Cue.Borderline : Cue.None;
        }

        /// <summary>A hold at working speed was left after so many bins, before it was captured.</summary>
        public Cue Left(int binsOpen, int binsUntilCaptured, int speedTenths) =>
            speedTenths > _limits.PedalTenths && binsOpen >= BinsMeant && binsOpen < binsUntilCaptured ? Cue.NotCapturedTooShort : Cue.None;

        private bool IsClose(int pascal, int limit) => limit > 0 && IntegerMath.Abs(pascal - limit) <= _main.AccuracyPascal;
    }
}
