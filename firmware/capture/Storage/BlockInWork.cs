using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Storage
{
    /// <summary>
    /// A block of samples that is made a record a part at a time, or another long record, and the records that come meanwhile: they are whole, and wait to stand behind it.
    /// </summary>
    internal sealed class BlockInWork
    {
        // Some dozens of events; more than can come in the steps that a block takes.
        private const int MostWaiting = 2048;

        /// <summary>Records that wait, one after the other.</summary>
        public readonly byte[] Waiting = new byte[MostWaiting];

        private readonly RecordWriter writer = new RecordWriter();
        private SampleBlock? block;
        private uint sequence;

        public bool IsInWork { get; private set; }

        /// <summary>It is a block of samples, no other record.</summary>
        public bool IsBlock => block != null;

        public int WaitingLength { get; private set; }

        public byte[] Bytes => writer.Bytes;

        /// <summary>Once all parts are done.</summary>
        public int Length => writer.BlockLength;

        public void Begin(SampleBlock taken, uint itsSequence)
        {
            IsInWork = true;
            IsWhole = false;
            block = taken;
            sequence = itsSequence;
            WaitingLength = 0;
            writer.BeginBlock(taken);
        }

        public void Begin(IRecord taken, uint sessionNumber, ushort bootCount, uint itsSequence)
        {
            IsInWork = true;
            IsWhole = false;
            block = null;
            sequence = itsSequence;
            WaitingLength = 0;
            writer.Begin(taken, sessionNumber, bootCount, itsSequence);
        }

        /// <summary>All parts are done.</summary>
        public bool IsWhole { get; private set; }

        /// <summary>Does a part, where there is one.</summary>
        public void Advance(uint sessionNumber, ushort bootCount) => IsWhole = IsInWork && writer.AdvanceBlock(block, sessionNumber, bootCount, sequence);

        public bool HasRoomFor(int length) => length <= MostWaiting - WaitingLength;

        public void Add(byte[] record, int length)
        {
            System.Array.Copy(record, 0, Waiting, WaitingLength, length);
            WaitingLength += length;
        }

        public void End() => IsInWork = false;
    }
}
