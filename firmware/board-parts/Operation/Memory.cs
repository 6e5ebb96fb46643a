using LoggerBox.BoardParts.Clock;
using LoggerBox.BoardParts.Plans;
using LoggerBox.BoardParts.Settings;
using LoggerBox.BoardParts.TwoWire;
using LoggerBox.Protocol.Records;

namespace LoggerBox.BoardParts.Operation
{
    /// <summary>What the logger knows from one start to the next: settings, plans, and the time.</summary>
    public sealed class Memory
    {
        public readonly BoardSettings Settings = new BoardSettings();
        public readonly PlanShelf Plans;
        public readonly WallClock Clock = new WallClock();

        private readonly TwoCopies _copies;
        private readonly Ds3231 _chip;
        private readonly BusCare _care;

        public Memory(TwoCopies settings, TwoCopies plans, Ds3231 chip, BusCare care)
        {
            _copies = settings;
            Plans = new PlanShelf(plans);
            _chip = chip;
            _care = care;
        }

        /// <summary>No calibration is known: there is none in flash, or none that is whole, and none has come since.</summary>
        public bool IsWithoutCalibration => Settings.Pressures[0].Kind == ChannelKind.None;

        /// <summary>Why the program restarted the board, times 256, and the thread; 0: it did not.</summary>
        public int Restart { get; private set; }

        /// <summary>Reads everything and counts this start; the log knows the highest start where flash does not.</summary>
        public void Load(ushort highestBootCount, long now)
        {
            ByteReader? reader = _copies.Load();
            if (reader == null || !Settings.TryRead(reader))
            {
                Settings.Reset();
            }

            Restart = EventRecord.Pair(Settings.RestartReason, Settings.RestartThread);
            Settings.RestartReason = 0;
            Settings.RestartThread = 0;
            Settings.BootCount = (ushort)((Settings.BootCount > highestBootCount ? Settings.BootCount : highestBootCount) + 1);
            Save();
            Plans.Load();
            bool isKnown = _chip.TryRead(out uint utcSeconds);
            Clock.Set(isKnown ? utcSeconds : 0, now);
        }

        public bool Save()
        {
            Settings.Write(_copies.Begin());
            return _copies.Save();
        }

        public void SetClock(uint utcSeconds, long now)
        {
            Clock.Set(utcSeconds, now);
            if (_care.MayUse(now))
            {
                _chip.TryWrite(utcSeconds);
            }
        }
    }
}
