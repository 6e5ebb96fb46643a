using LoggerBox.Capture.Samples;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Engagements
{
    /// <summary>
    /// Reads one filling of a clutch off its pressure: short jump to the return spring's pressure, plateau while the piston travels,
    /// rise to the line's. Levels are taken above the empty clutch's reading, so that a zero offset moves no time.
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

        private readonly FineTrace _clutch;
        private int _empty;
        private int _height;

        public EngagementShape(FineTrace clutch)
        {
            _clutch = clutch;
        }

        /// <summary>
        /// Fills times, settled pressure and overshoot. False where the pressure between the moments shows no filling.
        /// </summary>
        /// <param name="tag">When the gear was tagged; -1 where it was not, or later than the pressure.</param>
        /// <param name="from">Not before this moment.</param>
        /// <param name="end">The pressure had settled and nothing had moved until here.</param>
        /// <param name="floor">Counts below which a rise is noise.</param>
        public bool Read(long tag, long from, long end, int floor, EngagementRecord into)
        {
            int first = _clutch.IndexAt(from);
            int last = _clutch.IndexAt(end);
            int third = (last - first) / 3;
            int tail = IntegerMath.Max(third, 1);
            if (last - first < 9)
            {
                return false;
            }

            tail = IntegerMath.Max(1, IntegerMath.Min(tail, last - _clutch.IndexAt(end - 1000000)));
            int settled = _clutch.Mean(last - tail, last);
            _empty = LowestStretch(first, last);
            _height = settled - _empty;
            int rise = _height < floor ? -1 : FirstAbove(first, last, _empty + IntegerMath.Max(floor / 2, _height * LeavesPercent / 100));
            if (rise < 0)
            {
                return false;
            }

            long start = tag >= 0 && tag <= _clutch.Time(rise) ? tag : _clutch.Time(rise);
            int high = FirstAbove(rise, last, _empty + (_height * PlateauBelowPercent / 100));
            int reached = FirstAbove(rise, last, _empty + (_height * ReachedPercent / 100));
            if (high < 0 || reached < 0)
            {
                return false;
            }

            long filled = FillEnd(rise, high, floor);
            into.StartMicroseconds = start;
            into.StartFromPressure = start != tag;
            into.FillMilliseconds = (int)((filled - start) / 1000);
            into.TotalMilliseconds = (int)((Crossing(reached, _empty + (_height * ReachedPercent / 100)) - start) / 1000);
            into.RiseMilliseconds = into.TotalMilliseconds - into.FillMilliseconds;
            into.SettledHundredths = settled * 100;
            into.Disturbed = !IsFlat(last) || end - start < MinimumMicroseconds;
            into.OvershootPerMille = IntegerMath.Max(0, (int)((long)(Highest(reached, last) - settled) * 1000 / _height));
            return true;
        }

        // What settled half a second ago has settled.
        private bool IsFlat(int last)
        {
            int half = _clutch.IndexAt(_clutch.Time(last - 1) - 500000);
            int whole = _clutch.IndexAt(_clutch.Time(last - 1) - 1000000);
            return half - whole > 2 && IntegerMath.Abs(_clutch.Mean(half, last) - _clutch.Mean(whole, half)) * 25L <= _height;
        }

        private long FillEnd(int rise, int high, int floor)
        {
            int from = _clutch.IndexAt(_clutch.Time(rise) + JumpMicroseconds);
            int middle = (from + high) / 2;
            int plateau = middle > from ? _clutch.Mean(from, middle) : _clutch.Value(rise);
            int limit = plateau + IntegerMath.Max(floor / 2, _height * LeavesPercent / 100);
            for (int i = high; i > rise; i--)
            {
                if (_clutch.Value(i - 1) <= limit)
                {
                    return Crossing(i, limit);
                }
            }

            return _clutch.Time(rise);
        }

        // The lowest tenth of a second in the first half: the clutch was empty there, or as empty as a direct reversal left it.
        private int LowestStretch(int first, int last)
        {
            int lowest = int.MaxValue;
            int middle = (first + last) / 2;
            for (int i = first; i < middle; i += 5)
            {
                int mean = _clutch.Mean(i, IntegerMath.Min(i + 10, last));
                lowest = IntegerMath.Min(lowest, mean);
            }

            return lowest;
        }

        // Two points running: one alone may be noise.
        private int FirstAbove(int from, int to, int level)
        {
            for (int i = from; i < to - 1; i++)
            {
                if (_clutch.Value(i) >= level && _clutch.Value(i + 1) >= level)
                {
                    return i;
                }
            }

            return -1;
        }

        private long Crossing(int index, int level)
        {
            if (index == 0 || _clutch.Value(index - 1) >= level || _clutch.Value(index) <= level)
            {
                return _clutch.Time(index);
            }

            long step = _clutch.Time(index) - _clutch.Time(index - 1);
            return _clutch.Time(index - 1)
                + (step * (level - _clutch.Value(index - 1)) / (_clutch.Value(index) - _clutch.Value(index - 1)));
        }

        // Of three neighbours the middle one counts, so that ripple is no overshoot.
        private int Highest(int from, int to)
        {
            int highest = int.MinValue;
            for (int i = from; i + 5 <= to; i++)
            {
                highest = IntegerMath.Max(highest, _clutch.Mean(i, i + 5));
            }

            return highest == int.MinValue ? _clutch.Value(from) : highest;
        }
    }
}
