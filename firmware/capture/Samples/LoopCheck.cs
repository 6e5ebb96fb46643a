using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Samples
{
    /// <summary>
    /// A loop's current against the bands of NAMUR NE 43: 3.8 to 20.5 mA measure, up to 3.6 and from 21 mA the loop has failed, between
    /// is saturated: a transducer that can show no more stands at 20.5 mA. A pressure that another instrument recorded is always valid.
    /// </summary>
    public sealed class LoopCheck
    {
        // 1.25 uA a count (100 ohm, 125 uV): 4 mA are 3200 counts.
        private const int CountsPerMilliampere = 800;
        public const int OpenCounts = 36 * CountsPerMilliampere / 10;
        public const int LowestCounts = 38 * CountsPerMilliampere / 10;
        public const int HighestCounts = 205 * CountsPerMilliampere / 10;
        public const int ShortCounts = 21 * CountsPerMilliampere;

        private readonly ChannelKind _kind;
        private LoopState _state;

        // What a loop that measures may read next and go on measuring; no reading is, where it does not.
        private int _calmFrom = int.MaxValue;
        private int _calmTo;

        public LoopCheck(ChannelCalibration calibration)
        {
            _kind = calibration.Kind;
        }

        public LoopState State => _state;

        /// <summary>The reading, or Missing where the current says nothing about a pressure.</summary>
        public int Pass(int counts)
        {
            if (counts >= _calmFrom && counts < _calmTo)
            {
                return counts;
            }

            _state = StateOf(counts);
            bool isCalm = _state == LoopState.Measuring && _kind == ChannelKind.CurrentLoop;
            _calmFrom = isCalm ? LowestCounts : int.MaxValue;
            _calmTo = HighestCounts;
            return _state == LoopState.Measuring ? counts : SampleSet.Missing;
        }

        private LoopState StateOf(int counts)
        {
            if (_kind == ChannelKind.None || counts == SampleSet.Missing)
            {
                return LoopState.NoReading;
            }

            if (_kind == ChannelKind.RecordedPressure)
            {
                return LoopState.Measuring;
            }

            return counts <= OpenCounts ? LoopState.Open
                : counts >= ShortCounts ? LoopState.Shorted
                : counts < LowestCounts || counts >= HighestCounts ? LoopState.Saturated
                : LoopState.Measuring;
        }
    }
}
