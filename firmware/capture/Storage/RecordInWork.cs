using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Storage
{
    /// <summary>A record that is made a part at a time, and the records that come meanwhile: they are whole, and wait to stand behind it.</summary>
    internal sealed class RecordInWork
    {
        // Some dozens of events; more than can come in the steps that a block takes.
        private const int MostWaiting = 2048;

        /// <summary>Records that wait, one after the other.</summary>
        public readonly byte[] Waiting = new byte[MostWaiting];

        private readonly RecordWriter writer = new RecordWriter();
        private IPartedRecord record = new HoldRecord();
        private uint sequence;

        public bool IsInWork { get; private set; }

        /// <summary>It is a block of samples: with it all that came before is stored.</summary>
        public bool IsBlock => record.Code == RecordCode.SampleBlock;

        public int WaitingLength { get; private set; }

        public byte[] Bytes => writer.Bytes;

        /// <summary>Once all parts are done.</summary>
        public int Length => writer.PartedLength;

        /// <summary>Until then, about.</summary>
        public int PartsLeft => writer.PartsLeft(record);

        /// <summary>What is left is its check.</summary>
        public bool IsChecking => writer.IsChecking;

        /// <summary>All parts are done.</summary>
        public bool IsWhole { get; private set; }

        public void Begin(IPartedRecord taken, uint itsSequence)
        {
            IsInWork = true;
            IsWhole = false;
            record = taken;
            sequence = itsSequence;
            WaitingLength = 0;
            writer.Begin(taken);
        }

        /// <summary>Does a part, where there is one.</summary>
        public void Advance(uint sessionNumber, ushort bootCount) => IsWhole = IsInWork && writer.Advance(record, sessionNumber, bootCount, sequence);

        public bool HasRoomFor(int length) => length <= MostWaiting - WaitingLength;

        public void Add(byte[] bytes, int length)
        {
            System.Array.Copy(bytes, 0, Waiting, WaitingLength, length);
            WaitingLength += length;
        }

        public void End() => IsInWork = false;
    }
}
