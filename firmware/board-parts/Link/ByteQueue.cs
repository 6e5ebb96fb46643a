namespace LoggerBox.BoardParts.Link
{
    /// <summary>Bytes from one thread to another. It never waits: what does not fit is offered again.</summary>
    public sealed class ByteQueue
    {
        private readonly byte[] _bytes;
        private readonly object _lock = new object();
        private int _first;
        private int _count;

        public ByteQueue(int capacity)
        {
            _bytes = new byte[capacity];
        }

        /// <summary>Returns how many were taken.</summary>
        public int Put(byte[] buffer, int offset, int count)
        {
            lock (_lock)
            {
                int free = _bytes.Length - _count;
                int taken = free < count ? free : count;
                for (int i = 0; i < taken; i++)
                {
                    _bytes[(_first + _count + i) % _bytes.Length] = buffer[offset + i];
                }

                _count += taken;
                return taken;
            }
        }

        /// <summary>Returns how many were given; 0 when it is empty.</summary>
        public int Take(byte[] buffer, int offset, int count)
        {
            lock (_lock)
            {
                int given = _count < count ? _count : count;
                for (int i = 0; i < given; i++)
                {
                    buffer[offset + i] = _bytes[(_first + i) % _bytes.Length];
                }

                _first = (_first + given) % _bytes.Length;
                _count -= given;
                return given;
            }
        }
    }
}
