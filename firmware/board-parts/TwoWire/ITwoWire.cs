namespace LoggerBox.BoardParts.TwoWire
{
    /// <summary>The I2C bus. Nothing here throws; a transfer that failed says so.</summary>
    public interface ITwoWire
    {
        TwoWireResult Write(int address, byte[] bytes, int count);

        /// <summary>Points at a register and reads from there.</summary>
        TwoWireResult ReadRegister(int address, byte register, byte[] into, int count);

        /// <summary>Frees a data line that a chip holds down, and opens the bus anew.</summary>
        void Recover();
    }

    public enum TwoWireResult
    {
        Done,

        /// <summary>The bus works, the chip did not acknowledge.</summary>
        NoAnswer,

        /// <summary>A line is held, or the transfer broke off.</summary>
        BusFailed,
    }
}
