namespace LoggerBox.Protocol.Encoding
{
    /// <summary>The codes that predict, each in the place of its mode.</summary>
    public static class ColumnCodes
    {
        public const int Count = 5;

        public static ColumnCode[] ByMode()
        {
            ColumnCode[] codes = new ColumnCode[Count];
            codes[(int)ColumnMode.Delta] = new ColumnCode(Predictor.Delta());
            codes[(int)ColumnMode.Average] = new ColumnCode(Predictor.Average());
            codes[(int)ColumnMode.Trend] = new ColumnCode(Predictor.Trend());
            return codes;
        }
    }
}
