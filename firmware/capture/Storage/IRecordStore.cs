namespace LoggerBox.Capture.Storage
{
    /// <summary>
    /// A card or a memory of pages. A write that power fails in spoils pages of that write only: no page beside them. Nothing here throws:
    /// a store that cannot is a store that is full.
    /// </summary>
    public interface IRecordStore
    {
        /// <summary>Bytes that the card programs at once, 128 to 2048: what is written begins and ends with a page.</summary>
        int PageLength { get; }

        /// <summary>Bytes that it can hold.</summary>
        long Capacity { get; }

        /// <summary>What lies from here on was never written. A card that cannot tell says its capacity.</summary>
        long Length { get; }

        /// <summary>Returns how many bytes were read: fewer than asked for at the end.</summary>
        int Read(long offset, byte[] buffer, int bufferOffset, int count);

        /// <summary>
        /// Writes whole pages over whatever is there. True when all the bytes are safe from a power cut. After false, or a cut, the pages
        /// may hold anything.
        /// </summary>
        bool Write(long offset, byte[] buffer, int bufferOffset, int count);
    }
}
