namespace LoggerBox.BoardParts.Inputs
{
    /// <summary>The contacts as they are at one moment, bounce and all; the board fills it before each poll.</summary>
    public sealed class InputLevels
    {
        public bool Forward;
        public bool Reverse;
        public bool Button;
        public bool SupplyLow;
    }
}
