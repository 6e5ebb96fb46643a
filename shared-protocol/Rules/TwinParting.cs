using LoggerBox.Protocol.Records;

namespace LoggerBox.Protocol.Rules
{
    /// <summary>Two or more of one gear, all called the same: the one that looks most like the other step is the other step.</summary>
    internal sealed class TwinParting
    {
        // Per mille of speed between two that are not alike.
        private const int LeastApart = 30;

        private readonly Step _hold;
        private readonly Step _stall;
        private int _holdsFound;
        private int _stallsFound;
        private int _stallLike;
        private int _holdLike;
        private int _most;
        private int _least;

        public TwinParting(Step hold, Step stall)
        {
            _hold = hold;
            _stall = stall;
        }

        public void Begin()
        {
            _holdsFound = _stallsFound = _most = _least = 0;
            _stallLike = _holdLike = -1;
        }

        public void Take(HoldRecord[] holds, int count, int i, SpeedScale scale, Step[] names, SetUps setUps)
        {
            if (holds[i].Marked || (names[i] != _hold && names[i] != _stall) || DirectionNaming.Continues(holds, i))
            {
                return;
            }

            int evidence = DirectionNaming.StallEvidence(holds, count, i, scale);
            _holdsFound += names[i] == _hold ? 1 : 0;
            _stallsFound += names[i] == _stall ? 1 : 0;
            if (!setUps.IsForHolds(i) && !FullPedal.IsNoStall(holds, count, i, scale) && (_stallLike < 0 || evidence > _most))
            {
                _stallLike = i;
                _most = evidence;
            }

            if (_holdLike < 0 || evidence < _least)
            {
                _holdLike = i;
                _least = evidence;
            }
        }

        public void Part(HoldRecord[] holds, int count, SpeedScale scale, Step[] names)
        {
            if (_stallLike < 0 || _most - _least < LeastApart)
            {
                return;
            }

            if (_stallsFound == 0)
            {
                Rename(holds, count, _stallLike, _stall, names);
            }
            else if (_holdsFound == 0 && DirectionNaming.PerMille(scale.FromHold(SpeedScale.Speed(holds[_holdLike])), scale.Hold) < 100)
            {
                Rename(holds, count, _holdLike, _hold, names);
            }
        }

        private static void Rename(HoldRecord[] holds, int count, int first, Step name, Step[] names)
        {
            names[first] = name;
            for (int i = first + 1; i < count && DirectionNaming.Continues(holds, i); i++)
            {
                names[i] = name;
            }
        }
    }
}
