using LoggerBox.Protocol.Records;

namespace LoggerBox.Capture.Storage
{
    /// <summary>Blocks of samples and other long records, which are taken in parts: none of the sets that come meanwhile waits for one.</summary>
    public sealed partial class RecordLog
    {
        /// <summary>What the last part takes, that of the storing, see <see cref="NextPart"/>.</summary>
        public const int OfStoring = 2600;

        private const int OfEncoding = 1900;
        private const int OfChecking = 1200;

        private readonly RecordInWork inWork = new RecordInWork();

        /// <summary>
        /// Begins to take a record, which is to stay as it is until <see cref="Advance"/> says that it is taken; a block of samples is safe from a power cut
        /// then. Records that are appended meanwhile stand behind it.
        /// </summary>
        public bool Begin(IPartedRecord record)
        {
            if (!HasRoom())
            {
                return false;
            }

            inWork.Begin(record, TakeSequence());
            return true;
        }

        /// <summary>A record is being taken in parts.</summary>
        public bool IsInWork => inWork.IsInWork;

        /// <summary>Instructions that the next part takes at most (`DEVELOPERS.md` says how they are measured): encoding, a part of its check, its storing.</summary>
        public int NextPart => inWork.IsWhole ? OfStoring : inWork.IsChecking ? OfChecking : OfEncoding;

        /// <summary>Parts that a record in work takes yet, about; its storing is one more.</summary>
        public int PartsLeft => inWork.PartsLeft + 1;

        // For one more record of any length; what was begun before is finished.
        private bool HasRoom()
        {
            if (!IsRecording || IsFull || !FinishParts())
            {
                return false;
            }

            IsFull = FreePages < block.PagesWith(RecordFormat.MaxRecord);
            return !IsFull;
        }

        /// <summary>Does a part of it; true when it is taken, or the card took no more.</summary>
        public bool Advance()
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
                IsFull = !TryAdd(inWork.Waiting, inWork.WaitingLength);
            }

            return true;
        }

        private bool FinishParts()
        {
            while (!Advance())
            {
            }

            return !IsFull;
        }
    }
}
