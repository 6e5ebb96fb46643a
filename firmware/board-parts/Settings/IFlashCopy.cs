namespace LoggerBox.BoardParts.Settings
{
    /// <summary>One of the two places in internal flash where a block of settings stands. Nothing here throws.</summary>
    public interface IFlashCopy
    {
        /// <summary>Returns how many bytes were read, 0 where there is nothing.</summary>
        int Read(byte[] buffer);

        /// <summary>Replaces what is there. After false, or a cut, anything may stand there.</summary>
        bool Write(byte[] buffer, int count);
    }
}
