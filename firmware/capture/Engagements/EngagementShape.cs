using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Engagements
{
    /// <summary>
    /// Reads one filling of a clutch off its pressure: short jump to the return spring's pressure, plateau while the piston travels,
    /// rise to the line's. Levels are taken above the empty clutch's reading, so that a zero offset moves no time. Some points at a time.
    /// </summary>
    public sealed class EngagementShape
    {
        // The plateau lies below this share of the settled pressure: a return spring that held more would never let the clutch carry.
        private const int PlateauBelowPercent = 45;
        private const int LeavesPercent = 4;
        private const int ReachedPercent = 90;

        // The jump to the spring's pressure takes some 30 ms and is not yet plateau.
        private const int JumpMicroseconds = 30000;

        // Shorter than this even a harsh clutch has not shown what it settles at.
        private const int MinimumMicroseconds = 1000000;

        private const int PointsAtATime = 20;
        private const int StretchPoints = 10;
        private const int NeighboursOfPeak = 5;
        private const int FewestPoints = 9;

        private readonly FineTrace _clutch;
        private EngagementRecord _into;
        private Part _part = Part.Read;
        private long _tag;
        private long _from;
        private long _end;
        private int _floor;
        private int _first;
        private int _last;
        private int _next;
        private int _settled;
        private int _empty;
        private int _height;
        private int _rise;
        private int _high;
        private int _reached;
        private int _plateauFrom;
        private int _limit;
        private long _sum;
        private long _highest;

        public EngagementShape(FineTrace clutch)
        {
            _clutch = clutch;
            _into = new EngagementRecord();
        }

        private enum Part : byte
        {
            Bounds,
            Settled,
            Empty,
            Rise,
            High,
            Reached,
            Plateau,
            Leaving,
            Flatness,
            Peak,
            Read,
        }

        /// <summary>A shape is being read.</summary>
        public bool IsReading => _part != Part.Read;

        /// <summary>After the last <see cref="Advance"/>: the pressure between the moments showed a filling.</summary>
        public bool IsFilling { get; private set; }

        /// <summary>Times, settled pressure and overshoot are to be read.</summary>
        /// <param name="tag">When the gear was tagged; -1 where it was not, or later than the pressure.</param>
        /// <param name="from">Not before this moment.</param>
        /// <param name="end">The pressure had settled and nothing had moved until here.</param>
        /// <param name="floor">Counts below which a rise is noise.</param>
        public void Begin(long tag, long from, long end, int floor, EngagementRecord into)
        {
            _into = into;
            _tag = tag;
            _from = from;
            _end = end;
            _floor = floor;
            IsFilling = false;
            _part = Part.Bounds;
        }

        /// <summary>Looks at some points; true when those were the last.</summary>
        public bool Advance()
        {
            switch (_part)
            {
                case Part.Bounds:
                    _first = _clutch.NumberAt(_from);
                    _last = _clutch.NumberAt(_end);
                    _part = _last - _first < FewestPoints ? Part.Read : Part.Settled;
                    break;
                case Part.Settled:
                    TakeSettled();
                    break;
                case Part.Empty:
                    SeekEmpty();
                    break;
                case Part.Rise:
                    _rise = Seek();
                    Go(_rise, Part.High, _rise, PlateauBelowPercent);
                    break;
                case Part.High:
                    _high = Seek();
                    Go(_high, Part.Reached, _rise, ReachedPercent);
                    break;
                case Part.Reached:
                    _reached = Seek();
                    Go(_reached, Part.Plateau, 0, 0);
                    break;
                case Part.Plateau:
                    SumPlateau();
                    break;
                case Part.Leaving:
                    SeekLeaving();
                    break;
                case Part.Flatness:
                    TakeFlatness();
                    break;
                case Part.Peak:
                    SeekPeak();
                    break;
                default:
                    break;
            }

            return !IsReading;
        }

        private void TakeSettled()
        {
            int tail = IntegerMath.Max(1, IntegerMath.Min((_last - _first) / 3, _last - _clutch.NumberAt(_end - 1000000)));
            _settled = _clutch.Mean(_last - tail, _last);
            _empty = int.MaxValue;
            _next = _first;
            _part = Part.Empty;
        }

        // The lowest tenth of a second in the first half: the clutch was empty there, or as empty as a direct reversal left it.
        private void SeekEmpty()
        {
            int middle = _first + ((_last - _first) / 2);
            int until = IntegerMath.Min(_next + PointsAtATime, middle);
            for (; _next < until; _next += StretchPoints / 2)
            {
                _empty = IntegerMath.Min(_empty, _clutch.Mean(_next, IntegerMath.Min(_next + StretchPoints, _last)));
            }

            if (_next >= middle)
            {
                _height = _settled - _empty;
                _limit = _empty + IntegerMath.Max(_floor / 2, _height * LeavesPercent / 100);
                _next = _first;
                _part = _height < _floor ? Part.Read : Part.Rise;
            }
        }

        // The first two points running at the level, one alone may be noise; -1 where there are none, -2 while there may be some.
        private int Seek()
        {
            int until = IntegerMath.Min(_next + PointsAtATime, _last);
            int found = _clutch.FirstTwoAbove(_next, until, _limit);
            _next = until - 1;
            return found >= 0 || until == _last ? found : -2;
        }

        private void Go(int found, Part then, int from, int percent)
        {
            if (found == -2)
            {
                return;
            }

            _part = found < 0 ? Part.Read : then;
            _next = from;
            _limit = _empty + (_height * percent / 100);
            if (_part == Part.Plateau)
            {
                _plateauFrom = _clutch.NumberAt(_clutch.Time(_rise) + JumpMicroseconds);
                _next = _plateauFrom;
                _sum = 0;
            }
        }

        private void SumPlateau()
        {
            int middle = _plateauFrom + ((_high - _plateauFrom) / 2);
            int until = IntegerMath.Min(_next + PointsAtATime, middle);
            _sum += _clutch.Sum(_next, until);
            _next = IntegerMath.Max(_next, until);
            if (_next < middle)
            {
                return;
            }

            int plateau = middle > _plateauFrom ? (int)IntegerMath.DivideRounded(_sum, middle - _plateauFrom) : _clutch.Value(_rise);
            _limit = plateau + IntegerMath.Max(_floor / 2, _height * LeavesPercent / 100);
            _next = _high;
            _part = Part.Leaving;
        }

        // Back from where the plateau is behind to the last point that is still on it.
        private void SeekLeaving()
        {
            int until = IntegerMath.Max(_next - PointsAtATime, _rise);
            while (_next > until && _clutch.Value(_next - 1) > _limit)
            {
                _next--;
            }

            if (_next > until || until == _rise)
            {
                TakeTimes(_next > _rise ? _clutch.Crossing(_next, _limit) : _clutch.Time(_rise));
                _part = Part.Flatness;
            }
        }

        private void TakeTimes(long filled)
        {
            long start = _tag >= 0 && _tag <= _clutch.Time(_rise) ? _tag : _clutch.Time(_rise);
            _into.StartMicroseconds = start;
            _into.StartFromPressure = start != _tag;
            _into.FillMilliseconds = (int)((filled - start) / 1000);
            _into.TotalMilliseconds = (int)((_clutch.Crossing(_reached, _empty + (_height * ReachedPercent / 100)) - start) / 1000);
            _into.RiseMilliseconds = _into.TotalMilliseconds - _into.FillMilliseconds;
            _into.SettledHundredths = _settled * 100;
        }

        // What settled half a second ago has settled.
        private void TakeFlatness()
        {
            int half = _clutch.NumberAt(_clutch.Time(_last - 1) - 500000);
            int whole = _clutch.NumberAt(_clutch.Time(_last - 1) - 1000000);
            bool isFlat = half - whole > 2 && IntegerMath.Abs(_clutch.Mean(half, _last) - _clutch.Mean(whole, half)) * 25L <= _height;
            _into.Disturbed = !isFlat || _end - _into.StartMicroseconds < MinimumMicroseconds;
            _next = _reached;
            _highest = long.MinValue;
            _sum = _clutch.Sum(_next, _next + NeighboursOfPeak - 1);
            _part = Part.Peak;
        }

        // Of five neighbours the mean counts, so that ripple is no overshoot.
        private void SeekPeak()
        {
            int until = IntegerMath.Min(_next + PointsAtATime, _last - NeighboursOfPeak + 1);
            if (_next < until)
            {
                long highest = _clutch.HighestSum(NeighboursOfPeak, _next, until, ref _sum);
                _highest = highest > _highest ? highest : _highest;
                _next = until;
            }

            if (_next >= _last - NeighboursOfPeak + 1)
            {
                int highest = _highest == long.MinValue ? _clutch.Value(_reached) : (int)IntegerMath.DivideRounded(_highest, NeighboursOfPeak);
                _into.OvershootPerMille = IntegerMath.Max(0, (int)((long)(highest - _settled) * 1000 / _height));

                // A clutch that was pressed from the start leaves no plateau before it reaches its pressure: nothing filled.
                IsFilling = _into.TotalMilliseconds > 0 && _into.RiseMilliseconds >= 0;
                _part = Part.Read;
            }
        }
    }
}
