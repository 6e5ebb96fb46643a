using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Rules
{
    /// <summary>
    /// Names the holds of a session, some of them at a time, so that a logger goes on with its readings meanwhile. Pass after pass over all of them:
    /// the scale of the speeds, the steps out of gear, clutches that never fill, the set-ups, the steps in gear, low stalls beside good ones,
    /// an engine that is held back, and what was marked.
    /// </summary>
    public sealed class StepNamer
    {
        private const int HoldsAtATime = 6;

        private readonly SpeedScale _scale = new SpeedScale(new PlanRecord());
        private readonly EmptyClutchNaming _emptyClutch = new EmptyClutchNaming();
        private readonly SetUps _setUps;
        private readonly TwinParting _forward = new TwinParting(Step.HoldForward, Step.StallForward);
        private readonly TwinParting _reverse = new TwinParting(Step.HoldReverse, Step.StallReverse);
        private readonly PartPedalNaming _partPedal = new PartPedalNaming();
        private readonly HeldBackNaming _heldBack = new HeldBackNaming();
        private HoldRecord[] _holds = new HoldRecord[0];
        private Step[] _names = new Step[0];
        private int _count;
        private Pass _pass = Pass.Done;
        private int _next;
        private uint _marked;

        /// <param name="capacity">The most holds there can be.</param>
        public StepNamer(int capacity)
        {
            _setUps = new SetUps(capacity);
        }

        private enum Pass : byte
        {
            Scale,
            Neutral,
            Governed,
            IdleWithEmptyClutch,
            HoldWithEmptyClutch,
            SetUp,
            Direction,
            Stalls,
            Twins,
            HeldBack,
            Marked,
            Done,
        }

        /// <summary>All are named.</summary>
        public bool IsDone => _pass == Pass.Done;

        /// <param name="holds">In order of time.</param>
        /// <param name="count">How many of them.</param>
        /// <param name="plan">The truck's speeds, as far as known.</param>
        /// <param name="names">Takes one step a hold.</param>
        public void Begin(HoldRecord[] holds, int count, PlanRecord plan, Step[] names)
        {
            _holds = holds;
            _names = names;
            _count = count;
            _marked = 0;
            _next = 0;
            _pass = count == 0 ? Pass.Done : Pass.Scale;
            _scale.Begin(plan);
            _emptyClutch.Begin();
            _setUps.Begin();
            _forward.Begin();
            _reverse.Begin();
            _partPedal.Begin();
            _heldBack.Begin();
        }

        /// <summary>Looks at some holds; true once all are named.</summary>
        public bool Advance()
        {
            int until = _next + HoldsAtATime < _count ? _next + HoldsAtATime : _count;
            for (; _next < until; _next++)
            {
                Look(_next);
            }

            if (_next == _count && _pass != Pass.Done)
            {
                EndPass();
                _next = 0;
                _pass++;
            }

            return IsDone;
        }

        private void Look(int i)
        {
            switch (_pass)
            {
                case Pass.Scale:
                    _scale.Take(_holds[i]);
                    _names[i] = _holds[i].Marked ? _holds[i].Step : Step.None;
                    _marked |= 1u << (int)_names[i];
                    break;
                case Pass.Neutral:
                    NeutralNaming.Name(_holds, _count, i, _scale, _names);
                    break;
                case Pass.Governed:
                    NeutralNaming.NameBefore(_holds, _count, i, _scale, _names);
                    _emptyClutch.Take(_holds[i], _names[i]);
                    break;
                case Pass.IdleWithEmptyClutch:
                    _emptyClutch.NameIdle(_holds, _count, i, _names);
                    break;
                case Pass.HoldWithEmptyClutch:
                    _emptyClutch.NameHold(_holds, _count, i, _names);
                    _emptyClutch.NameStall(_holds, _count, i, _names);
                    _setUps.Look(_holds[i], _names[i], _scale);
                    break;
                case Pass.SetUp:
                    _setUps.Take(_holds[i], i, i == _count - 1, _names[i], _scale);
                    break;
                case Pass.Direction:
                    DirectionNaming.Name(_holds, _count, i, _scale, _names, _setUps);
                    break;
                case Pass.Stalls:
                    _partPedal.Take(_holds, _count, i, _scale, _names[i]);
                    break;
                case Pass.Twins:
                    _names[i] = _partPedal.IsHalfAPedal(_holds[i], _names[i], _scale) ? Step.None : _names[i];
                    _forward.Take(_holds, _count, i, _scale, _names, _setUps);
                    _reverse.Take(_holds, _count, i, _scale, _names, _setUps);
                    break;
                case Pass.HeldBack:
                    _heldBack.Take(_holds[i], i, i == _count - 1, _names[i], _scale);
                    break;
                default:
                    // A step that was marked anywhere is never guessed; that the engine is off is no guess.
                    _names[i] = !_holds[i].Marked && _names[i] != Step.Zero && (_marked & (1u << (int)_names[i])) != 0 ? Step.None : _names[i];
                    break;
            }
        }

        private void EndPass()
        {
            if (_pass == Pass.Scale)
            {
                _scale.Settle();
            }

            if (_pass == Pass.Twins)
            {
                _forward.Part(_holds, _count, _scale, _names);
                _reverse.Part(_holds, _count, _scale, _names);
            }

            if (_pass == Pass.HeldBack)
            {
                _heldBack.Name(_names, _scale);
            }
        }
    }
}
