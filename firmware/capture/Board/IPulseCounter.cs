namespace LoggerBox.Capture.Board
{
    /// <summary>
    /// A hardware pulse counter that runs free. Count and time are taken together, so that a late poll widens a bracket and never shifts it.
    /// </summary>
    public interface IPulseCounter
    {
        void Read(out long count, out long microseconds);
    }
}
