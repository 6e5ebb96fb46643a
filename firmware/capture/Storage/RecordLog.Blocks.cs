using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Storage
{
    /// <summary>Blocks of samples, which are taken in parts: none of the sets that come meanwhile waits for one.</summary>
    public sealed partial class RecordLog
    {
        private readonly BlockInWork inWork = new BlockInWork();

        /// <summary>
        /// Begins to take a block of samples, which is safe from a power cut once <see cref="AdvanceBlock"/> says that it is stored. Records that are
        /// appended meanwhile stand behind it.
        /// </summary>
        public bool BeginBlock(SampleBlock samples)
        {
            if (!HasRoom())
            {
                return false;
            }

            inWork.Begin(samples, TakeSequence());
            return true;
        }

        /// <summary>Begins to take a record that is long for one step: <see cref="AdvanceBlock"/> says when it is taken. It may change meanwhile.</summary>
        public bool Begin(IRecord record)
        {
            if (!HasRoom())
            {
                return false;
            }

            inWork.Begin(record, Sessions.Last!.Number, Sessions.Last!.BootCount, TakeSequence());
            return true;
        }

        // For one more record of any length; what was begun before is finished.
        private bool HasRoom()
        {
            if (!IsRecording || IsFull || !FinishBlock())
            {
                return false;
            }

            IsFull = FreePages < block.PagesWith(RecordFormat.MaxRecord);
            return !IsFull;
        }

        /// <summary>Does a part of it; true when it is stored, or the card took no more.</summary>
        public bool AdvanceBlock()
        {
            LoggedSession session = Sessions.Last!;
            if (!inWork.IsInWork || !inWork.IsWhole)
            {
                inWork.Advance(session.Number, session.BootCount);
                return !inWork.IsInWork;
            }

            inWork.End();
            IsFull |= inWork.Length == 0 || !TryAdd(inWork.Bytes, inWork.Length) || (inWork.IsBlock && !TryStore());
            if (!IsFull && inWork.WaitingLength > 0)
            {
                block.Add(inWork.Waiting, inWork.WaitingLength);
            }

            return true;
        }

        private bool FinishBlock()
        {
            while (!AdvanceBlock())
            {
            }

            return !IsFull;
        }
    }
}
