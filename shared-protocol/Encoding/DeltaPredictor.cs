namespace LoggerBox.Protocol.Encoding
{
    /// <summary>The value before. Best where readings swing faster than noise can be averaged away.</summary>
    public sealed class DeltaPredictor : Predictor
    {
        public override void Begin(int value) => Next = value;

        public override void Learn(int value, bool jumped) => Next = value;
    }
}
