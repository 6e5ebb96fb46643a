namespace LoggerBox.Capture.Storage
{
    /// <summary>A store that lives as long as the program. It grows by doubling, so a large capacity costs nothing until it is used.</summary>
    public sealed class MemoryStore : IRecordStore
    {
        private const int FirstSize = 65536;

        private readonly int capacity;
        private byte[] bytes;
        private int length;

        public MemoryStore(int capacity)
        {
            this.capacity = capacity;
            bytes = new byte[capacity < FirstSize ? capacity : FirstSize];
        }

        public int PageLength => 512;

        public long Capacity => capacity;

        public long Length => length;

        public int Read(long offset, byte[] buffer, int bufferOffset, int count)
        {
            if (offset < 0 || offset >= length)
            {
                return 0;
            }

            long left = length - offset;
            int readable = left < count ? (int)left : count;
            System.Array.Copy(bytes, (int)offset, buffer, bufferOffset, readable);
            return readable;
        }

        public bool Write(long offset, byte[] buffer, int bufferOffset, int count)
        {
            if (offset < 0 || count > capacity - offset)
            {
                return false;
            }

            int end = (int)offset + count;
            if (end > bytes.Length)
            {
                Grow(end);
            }

            System.Array.Copy(buffer, bufferOffset, bytes, (int)offset, count);
            length = end > length ? end : length;
            return true;
        }

        private void Grow(int wanted)
        {
            int size = bytes.Length;
            while (size < wanted)
            {
                size = size > capacity / 2 ? capacity : size * 2;
            }

            byte[] larger = new byte[size];
            System.Array.Copy(bytes, 0, larger, 0, length);
            bytes = larger;
        }
    }
}
