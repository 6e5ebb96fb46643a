namespace LoggerBox.Capture.Storage
{
    /// <summary>
    /// A card or a memory that bytes are only ever appended to. Nothing here throws: a store that cannot is a store that is full.
    /// </summary>
    public interface IRecordStore
    {
        /// <summary>Bytes that it can hold.</summary>
        long Capacity { get; }

        /// <summary>Bytes that it holds.</summary>
        long Length { get; }

        /// <summary>Returns how many bytes were read: fewer than asked for at the end.</summary>
        int Read(long offset, byte[] buffer, int bufferOffset, int count);

        /// <summary>
        /// True when all the bytes are safe from a power cut. After false, or a cut, any number of them may be there.
        /// </summary>
        bool Append(byte[] buffer, int offset, int count);

        /// <summary>Drops everything from this length on; returns when that is safe from a power cut.</summary>
        void Truncate(long length);
    }
}
