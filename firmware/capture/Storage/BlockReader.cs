using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Storage
{
    /// <summary>The records of one block, put together from its pages.</summary>
    internal sealed class BlockReader
    {
        /// <summary>How many bytes of the session stand before the block.</summary>
        public uint SessionOffset;

        public int FirstPage;

        /// <summary>Bytes of records, as far as the last page that was asked for.</summary>
        public int Length;

        /// <summary>Where the last whole record ends; 0 where there is none.</summary>
        public int EndOfRecords;

        /// <summary>The last whole record closes the session.</summary>
        public bool HoldsEnd;

        public readonly SessionConfirmation Note = new SessionConfirmation();

        private readonly CardPages pages;
        private readonly byte[] bytes = new byte[CardPages.LongestWrite];
        private readonly RecordReader reader;
        private readonly Envelope envelope = new Envelope();
        private uint nextSequence;

        public BlockReader(CardPages pages)
        {
            this.pages = pages;
            reader = new RecordReader(bytes);
        }

        /// <summary>Reads the block up to this page, whose header has just been looked at.</summary>
        public void Read(int lastPage)
        {
            PageHeader header = pages.Header;
            int used = header.Used;
            int before = header.IndexInBlock;
            uint number = header.SessionNumber;
            ushort bootCount = header.BootCount;
            FirstPage = lastPage - before;
            SessionOffset = header.SessionOffset - (uint)(before * pages.PayloadLength);
            Length = (before * pages.PayloadLength) + used;
            for (int i = 0; i < before; i++)
            {
                ReadFullPage(FirstPage + i, i, number);
            }

            pages.ReadPayload(lastPage, 0, bytes, before * pages.PayloadLength, used);
            FindRecords(number, bootCount);
        }

        /// <summary>Reads the note of a page whose header has just been looked at.</summary>
        public bool TryReadNote(int page)
        {
            int used = pages.Header.Used;
            pages.ReadPayload(page, 0, bytes, 0, used);
            return reader.TryReadEnvelope(0, used, envelope) == EnvelopeResult.Complete && reader.TryReadBody(envelope, Note);
        }

        private void ReadFullPage(int page, int index, uint number)
        {
            bool belongs = pages.Look(page) == PageState.Ours && pages.Header.SessionNumber == number && pages.Header.IndexInBlock == index;
            int at = index * pages.PayloadLength;
            if (belongs)
            {
                pages.ReadPayload(page, 0, bytes, at, pages.PayloadLength);
            }
            else
            {
                System.Array.Clear(bytes, at, pages.PayloadLength);
            }
        }

        private void FindRecords(uint number, ushort bootCount)
        {
            EndOfRecords = 0;
            HoldsEnd = false;
            nextSequence = 0;
            int at = 0;
            while (at < Length)
            {
                bool whole = reader.TryReadEnvelope(at, Length - at, envelope) == EnvelopeResult.Complete && Follows(number, bootCount);
                if (!whole)
                {
                    at = reader.FindMark(at + 1, Length);
                    continue;
                }

                at += envelope.RecordLength;
                EndOfRecords = at;
                HoldsEnd = envelope.Code == RecordCode.SessionEnd;
                nextSequence = envelope.Sequence + 1;
            }
        }

        // What is left of another session under a page of which only a part was written carries that session's numbers.
        private bool Follows(uint number, ushort bootCount) =>
            envelope.SessionNumber == number && envelope.BootCount == bootCount && envelope.Sequence >= nextSequence;
    }
}
