using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Storage
{
    /// <summary>
    /// A block of samples that is made a record a part at a time, and the records that come meanwhile: they are whole, and wait to stand behind it.
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

        public bool IsInWork => block != null;

        public int WaitingLength { get; private set; }

        public byte[] Bytes => writer.Bytes;

        /// <summary>Once all parts are done.</summary>
        public int Length => writer.BlockLength;

        public void Begin(SampleBlock taken, uint itsSequence)
        {
            block = taken;
            sequence = itsSequence;
            WaitingLength = 0;
            writer.BeginBlock(taken);
        }

        /// <summary>Does a part; true when that was the last.</summary>
        public bool Advance(uint sessionNumber, ushort bootCount) => writer.AdvanceBlock(block!, sessionNumber, bootCount, sequence);

        public bool HasRoomFor(int length) => length <= MostWaiting - WaitingLength;

        public void Add(byte[] record, int length)
        {
            System.Array.Copy(record, 0, Waiting, WaitingLength, length);
            WaitingLength += length;
        }

        public void End() => block = null;
    }
}
