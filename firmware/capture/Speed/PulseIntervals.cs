namespace LoggerBox.Capture.Speed
{
    /// <summary>
    /// Tells a lost and a doubled edge from a change of speed. Between two edges of a slow pickup a crankshaft can't change
    /// its speed by half; when it seems to twice running, it was the reference that was wrong. So it is when every other edge seems
    /// an extra one: an engine that catches leaves cranking speed within a turn, and would be taken for half its speed from then on.
    /// </summary>
    internal sealed class PulseIntervals
    {
        private long _reference;
        private bool _doubted;
        private bool _extraJustBefore;

        public void Forget()
        {
            _reference = 0;
            _doubted = false;
            _extraJustBefore = false;
        }

        /// <summary>Only where an interval is long beside the time between polls is its length known well enough.</summary>
        public bool CanJudge(long microseconds, long betweenPolls) =>
            microseconds > 4 * betweenPolls || _reference > 4 * betweenPolls;

        /// <summary>How many real pulse periods the interval holds: 1, 2 where an edge was lost, 0 where this edge is an extra one.</summary>
        public int Judge(long microseconds)
        {
            int periods = 1;
            if (_reference > 0 && !_doubted)
            {
                if (microseconds * 100 < _reference * 62)
                {
                    periods = _extraJustBefore ? 1 : 0;
                }
                else if (microseconds * 100 > _reference * 165 && microseconds * 100 < _reference * 235)
                {
                    periods = 2;
                }
            }

            _extraJustBefore = periods == 0 || (_extraJustBefore && _doubted);
            _doubted = periods != 1;
            if (periods != 0)
            {
                _reference = microseconds / periods;
            }

            return periods;
        }
    }
}
