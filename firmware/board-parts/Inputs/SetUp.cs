using LoggerBox.Protocol.Records;
using LoggerBox.Protocol.Rules;

namespace LoggerBox.BoardParts.Inputs
{
    /// <summary>
    /// What the operator said of the truck: drive wheels clear of the floor, or down and chocked. With it a run in gear gets its name;
    /// without it the logger takes each for a stall, which is the cautious way.
    /// </summary>
    public sealed class SetUp
    {
        // Above this an engine does not idle.
        private const int AboveIdleTenths = 11000;

        // The question stands for so long; then the button is no answer to it.
        private const long AnswerMicroseconds = 30000000;

        // To put a truck down takes minutes: after so long in neutral, clear wheels are not taken for granted any more.
        private const long ClearLastsMicroseconds = 60000000;

        private TruckPlacing _placing;
        private Step _mark;
        private long _askedAt = -AnswerMicroseconds;
        private long _inGearAt;

        public TruckPlacing Placing => _placing;

        public void Forget()
        {
            _placing = TruckPlacing.Unknown;
            _mark = Step.None;
            _askedAt = -AnswerMicroseconds;
        }

        public void Ask(long now) => _askedAt = now;

        public bool IsAsked(long now) => now - _askedAt < AnswerMicroseconds;

        public void Say(TruckPlacing placing, long now)
        {
            _placing = placing;
            _inGearAt = now;
            _askedAt = now - AnswerMicroseconds;
        }

        /// <summary>The step that is being done, as far as the operator's word names it.</summary>
        public Step Mark(Gear gear, int speedTenths, long now)
        {
            bool inGear = gear == Gear.Forward || gear == Gear.Reverse;
            _inGearAt = inGear ? now : _inGearAt;
            bool isOld = _placing == TruckPlacing.WheelsClear && now - _inGearAt > ClearLastsMicroseconds;
            _placing = speedTenths == 0 || isOld ? TruckPlacing.Unknown : _placing;
            if (!inGear || _placing == TruckPlacing.Unknown)
            {
                _mark = Step.None;
            }
            else if (speedTenths != SampleSet.Missing)
            {
                bool isForward = gear == Gear.Forward;
                _mark = speedTenths <= AboveIdleTenths ? Step.None
                    : _placing == TruckPlacing.WheelsClear ? (isForward ? Step.HoldForward : Step.HoldReverse)
                    : isForward ? Step.StallForward : Step.StallReverse;
            }

            return _mark;
        }
    }

    public enum TruckPlacing
    {
        Unknown = 0,
        WheelsClear = 1,
        Down = 2,
    }
}
