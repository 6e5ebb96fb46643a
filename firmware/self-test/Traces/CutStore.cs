using LoggerBox.Capture.Storage;

namespace LoggerBox.SelfTest.Traces
{
    /// <summary>A card that loses its power in the middle of a write, and one whose pages can be spoiled.</summary>
    internal sealed class CutStore : IRecordStore
    {
        private readonly MemoryStore card;
        private readonly byte[] half;

        public CutStore(int capacity)
        {
            card = new MemoryStore(capacity);
            half = new byte[card.PageLength * 8];
        }

        /// <summary>So many bytes until the power fails; below 0 it never does.</summary>
        public int BytesLeft { get; set; } = -1;

        public int PageLength => card.PageLength;

        public long Capacity => card.Capacity;

        public long Length => card.Length;

        public int Read(long offset, byte[] buffer, int bufferOffset, int count) => card.Read(offset, buffer, bufferOffset, count);

        public bool Write(long offset, byte[] buffer, int bufferOffset, int count)
        {
            if (BytesLeft < 0)
            {
                return card.Write(offset, buffer, bufferOffset, count);
            }

            int written = count < BytesLeft ? count : BytesLeft;
            BytesLeft -= written;
            return card.Write(offset, buffer, bufferOffset, written) && written == count;
        }

        /// <summary>The page cannot be read any more.</summary>
        public void Spoil(int page)
        {
            card.Read((long)page * PageLength, half, 0, PageLength);
            half[20] ^= 0x40;
            card.Write((long)page * PageLength, half, 0, PageLength);
        }
    }
}
