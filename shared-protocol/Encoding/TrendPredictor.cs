namespace LoggerBox.Protocol.Encoding
{
    /// <summary>Level and slope, both averaged. Best while speed and pressures run to a new level.</summary>
    public sealed class TrendPredictor : Predictor
    {
        internal const int LevelShift = 1;
        internal const int SlopeShift = 3;

        private int level;
        private int slope;

        public override void Begin(int value)
        {
            level = value << FractionBits;
            slope = 0;
            Next = value;
        }

        public override void Learn(int value, bool jumped)
        {
            int foretold = level + slope;
            int error = (value << FractionBits) - foretold;
            level = foretold + (error >> LevelShift);
            slope += error >> SlopeShift;
            Next = (level + slope + Half) >> FractionBits;
        }
    }
}
