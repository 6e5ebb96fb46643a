using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Rules
{
    /// <summary>
    /// How the truck stood while each hold was made. Where the engine was off in between, what was done between the same two stops tells the
    /// set-up; else holds mostly come before full pedal and stalls after it.
    /// </summary>
    internal sealed class SetUps
    {
        /// <summary>Weight of the set-up in per mille of speed: as much as a tenth of the speed.</summary>
        private const int SetUpEvidence = 90;

        private const int GovernedSeenEvidence = 15;

        /// <summary>Full pedal out of gear was among the holds so far.</summary>
        public bool GovernedSeen;

        private readonly int[] _evidence;
        private int _from;
        private bool _fullPedal;
        private bool _heldInNeutral;
        private bool _anyFullPedal;
        private int _runsInGear;
        private int _allRunsInGear;

        /// <param name="capacity">The most holds there can be.</param>
        public SetUps(int capacity)
        {
            _evidence = new int[capacity];
        }

        public void Begin()
        {
            GovernedSeen = false;
            _anyFullPedal = false;
            _allRunsInGear = 0;
            BeginStretch(0);
        }

        /// <summary>Above 0: rather set up for stalls.</summary>
        public int Evidence(int i) => _evidence[i] != 0 ? _evidence[i] : GovernedSeen ? GovernedSeenEvidence : -GovernedSeenEvidence;

        /// <summary>Wheels clear, by what was done between the same two stops: no stall is made so.</summary>
        public bool IsForHolds(int i) => _evidence[i] < 0;

        /// <summary>First all holds are looked at, out of gear named.</summary>
        public void Look(HoldRecord hold, Step name, SpeedScale scale)
        {
            _anyFullPedal |= IsFullPedal(name);
            _allRunsInGear += RunsInGear(hold, scale) ? 1 : 0;
        }

        /// <summary>Then each is taken, and the last.</summary>
        public void Take(HoldRecord hold, int i, bool isLast, Step name, SpeedScale scale)
        {
            _evidence[i] = 0;
            if (SpeedScale.IsStopped(hold))
            {
                EndStretch(i);
                BeginStretch(i + 1);
                return;
            }

            _fullPedal |= IsFullPedal(name);
            _heldInNeutral |= name == Step.HoldNeutral;
            _runsInGear += RunsInGear(hold, scale) ? 1 : 0;
            if (isLast)
            {
                EndStretch(i + 1);
            }
        }

        private void BeginStretch(int from)
        {
            _from = from;
            _fullPedal = _heldInNeutral = false;
            _runsInGear = 0;
        }

        // Above idle in a direction, before the engine was stopped or after it: the other set-up had its turn there.
        private void EndStretch(int to)
        {
            bool runsElsewhere = _allRunsInGear > _runsInGear;
            int evidence = _fullPedal && !_heldInNeutral && runsElsewhere ? SetUpEvidence
                : _heldInNeutral && !_fullPedal && _anyFullPedal ? -SetUpEvidence
                : 0;
            for (int i = _from; i < to; i++)
            {
                _evidence[i] = evidence;
            }
        }

        private static bool IsFullPedal(Step name) => name == Step.Governed || name == Step.Relief;

        private static bool RunsInGear(HoldRecord hold, SpeedScale scale) => StepNaming.InGear(hold) && SpeedScale.Speed(hold) > scale.IdleBelow;
    }
}
