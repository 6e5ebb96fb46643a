using LoggerBox.Capture.Storage;

namespace LoggerBox.SelfTest.Traces
{
    /// <summary>A card of fixed size in memory that can lose its power in the middle of a write, and whose pages can be spoiled.</summary>
    internal sealed class CutStore : IRecordStore
    {
        private readonly byte[] card;
        private int written;

        public CutStore(int capacity)
        {
            card = new byte[capacity];
        }

        /// <summary>So many bytes until the power fails; below 0 it never does.</summary>
        public int BytesLeft { get; set; } = -1;

        public int PageLength => 512;

        public long Capacity => card.Length;

        public long Length => written;

        public int Read(long offset, byte[] buffer, int bufferOffset, int count)
        {
            int left = written - (int)offset;
            int read = left < 0 ? 0 : left < count ? left : count;
            System.Array.Copy(card, (int)offset, buffer, bufferOffset, read);
            return read;
        }

        public bool Write(long offset, byte[] buffer, int bufferOffset, int count)
        {
            int got = BytesLeft < 0 || count < BytesLeft ? count : BytesLeft;
            BytesLeft -= BytesLeft < 0 ? 0 : got;
            System.Array.Copy(buffer, bufferOffset, card, (int)offset, got);
            int end = (int)offset + got;
            written = end > written ? end : written;
            return got == count;
        }

        /// <summary>The page cannot be read any more.</summary>
        public void Spoil(int page) => card[(page * PageLength) + 20] ^= 0x40;
    }
}
