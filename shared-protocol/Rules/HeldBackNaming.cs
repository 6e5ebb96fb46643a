using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Rules
{
    /// <summary>
    /// The full pedal of an engine that a controller holds near the hold speed: it looks like a hold at the wrong speed. It was full pedal
    /// where it was run between the same two stops as a stall, where the hold itself was run between others, and where no other speed was
    /// the governed one. Inside the hold's window it was, too, where the engine never reached the hold speed in any gear.
    /// </summary>
    internal sealed class HeldBackNaming
    {
        // A foot that holds a speed comes nearer to it, or goes past it once.
        private const int ReachedPerMille = 990;

        private bool _anyFullPedal;
        private int _allHolds;
        private int _topSpeed;
        private int _found;
        private bool _isFoundInWindow;
        private int _holdsBesideFound;

        // Between two stops of the engine.
        private int _fastest;
        private int _fastestSpeed;
        private int _holds;
        private bool _inWindow;
        private bool _stalled;

        public void Begin()
        {
            _anyFullPedal = false;
            _allHolds = 0;
            _topSpeed = 0;
            _found = -1;
            BeginStretch();
        }

        /// <summary>Each hold in turn, named as far as it can be.</summary>
        public void Take(HoldRecord hold, int i, bool isLast, Step name, SpeedScale scale)
        {
            _anyFullPedal |= name == Step.Governed || name == Step.Relief;
            _stalled |= name == Step.StallForward || name == Step.StallReverse || name == Step.StallInGear;
            int speed = SpeedScale.Speed(hold);
            _topSpeed = speed > _topSpeed ? speed : _topSpeed;
            if (name == Step.HoldNeutral)
            {
                TakeHold(hold, i, scale);
            }

            if (isLast || SpeedScale.IsStopped(hold))
            {
                EndStretch();
                BeginStretch();
            }
        }

        /// <summary>When all were taken.</summary>
        public void Name(Step[] names, SpeedScale scale)
        {
            bool reached = _topSpeed * 1000L >= (long)scale.Hold * ReachedPerMille;
            if (_found >= 0 && !_anyFullPedal && _allHolds > _holdsBesideFound && !(_isFoundInWindow && reached))
            {
                names[_found] = Step.Governed;
            }
        }

        private void TakeHold(HoldRecord hold, int i, SpeedScale scale)
        {
            int speed = SpeedScale.Speed(hold);
            _allHolds++;
            _holds++;
            _inWindow |= scale.FromHold(speed) <= scale.HoldWindow;
            if (!hold.Marked && speed >= _fastestSpeed)
            {
                _fastest = i;
                _fastestSpeed = speed;
            }
        }

        private void BeginStretch()
        {
            _fastest = -1;
            _fastestSpeed = 0;
            _holds = 0;
            _inWindow = false;
            _stalled = false;
        }

        private void EndStretch()
        {
            if (_fastest >= 0 && _stalled)
            {
                _found = _fastest;
                _isFoundInWindow = _inWindow;
                _holdsBesideFound = _holds;
            }
        }
    }
}
