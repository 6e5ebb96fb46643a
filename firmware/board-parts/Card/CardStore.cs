using LoggerBox.Capture.Storage;

namespace LoggerBox.BoardParts.Card
{
    /// <summary>
    /// The record log's store on a card: one file of fixed length, so that a write changes its own pages and neither directory nor
    /// allocation table. A write that failed closes the file: a card that was pulled may come back as another one.
    /// </summary>
    public sealed class CardStore : IRecordStore
    {
        private readonly ICardFile _file;
        private long _capacity;

        public CardStore(ICardFile file)
        {
            _file = file;
        }

        /// <summary>A card is there and takes what is written.</summary>
        public bool IsThere => _capacity > 0;

        /// <summary>A new card's file is being made, a part at each <see cref="TryOpen"/>.</summary>
        public bool IsBeingMade => _file.IsBeingMade;

        public int Failures { get; private set; }

        public int PageLength => 512;

        public long Capacity => _capacity;

        // A card cannot tell what was written: the file was filled with zeros when it was made.
        public long Length => _capacity;

        public bool TryOpen()
        {
            _capacity = _file.Open() / PageLength * PageLength;
            return IsThere;
        }

        public int Read(long offset, byte[] buffer, int bufferOffset, int count)
        {
            long left = _capacity - offset;
            int readable = left < count ? (int)left : count;
            return offset < 0 || readable <= 0 ? 0 : _file.Read(offset, buffer, bufferOffset, readable);
        }

        public bool Write(long offset, byte[] buffer, int bufferOffset, int count)
        {
            if (offset < 0 || count > _capacity - offset)
            {
                return false;
            }

            if (_file.Write(offset, buffer, bufferOffset, count))
            {
                return true;
            }

            Failures++;
            _capacity = 0;
            _file.Close();
            return false;
        }
    }
}
