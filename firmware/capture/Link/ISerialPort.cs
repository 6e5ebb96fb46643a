namespace LoggerBox.Capture.Link
{
    /// <summary>The logger's end of the cable. Neither call waits.</summary>
    public interface ISerialPort
    {
        /// <summary>Bytes that have come, at most so many; 0 when there are none or nobody is there.</summary>
        int Read(byte[] buffer, int offset, int count);

        /// <summary>Returns how many bytes were taken, 0 to count; the rest is offered again later.</summary>
        int Write(byte[] buffer, int offset, int count);
    }
}
