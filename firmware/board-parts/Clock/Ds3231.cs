using LoggerBox.BoardParts.TwoWire;

namespace LoggerBox.BoardParts.Clock
{
    /// <summary>
    /// The clock chip with its own cell (DS3231). It remembers that its oscillator has stood still: then its time is no time, however
    /// much it looks like one.
    /// </summary>
    public sealed class Ds3231
    {
        public const int Address = 0x68;

        private const byte SecondsRegister = 0;
        private const byte StatusRegister = 0x0F;
        private const int StoodStill = 0x80;

        private readonly ITwoWire _bus;
        private readonly byte[] _bytes = new byte[8];
        private readonly CivilTime _time = new CivilTime();

        public Ds3231(ITwoWire bus)
        {
            _bus = bus;
        }

        /// <summary>Seconds since 1970 UTC; false where the chip does not answer, was never set, or had lost its cell.</summary>
        public bool TryRead(out uint utcSeconds)
        {
            utcSeconds = 0;
            if (_bus.ReadRegister(Address, StatusRegister, _bytes, 1) != TwoWireResult.Done || (_bytes[0] & StoodStill) != 0
                || _bus.ReadRegister(Address, SecondsRegister, _bytes, 7) != TwoWireResult.Done)
            {
                return false;
            }

            _time.Second = Number(_bytes[0]);
            _time.Minute = Number(_bytes[1]);
            _time.Hour = (_bytes[2] & 0x40) != 0 ? -1 : Number(_bytes[2]);
            _time.Day = Number(_bytes[4]);
            _time.Month = Number((byte)(_bytes[5] & 0x1F));
            _time.Year = 2000 + Number(_bytes[6]);
            utcSeconds = _time.IsPossible ? _time.ToUtcSeconds() : 0;
            return _time.IsPossible;
        }

        /// <summary>Sets the time, then clears the mark that it had stood still; false where the chip did not take both.</summary>
        public bool TryWrite(uint utcSeconds)
        {
            if (!_time.TrySet(utcSeconds))
            {
                return false;
            }

            _bytes[0] = SecondsRegister;
            _bytes[1] = Digits(_time.Second);
            _bytes[2] = Digits(_time.Minute);
            _bytes[3] = Digits(_time.Hour);
            _bytes[4] = (byte)((((utcSeconds / 86400) + 4) % 7) + 1);
            _bytes[5] = Digits(_time.Day);
            _bytes[6] = Digits(_time.Month);
            _bytes[7] = Digits(_time.Year - 2000);
            if (_bus.Write(Address, _bytes, 8) != TwoWireResult.Done)
            {
                return false;
            }

            _bytes[0] = StatusRegister;
            _bytes[1] = 0;
            return _bus.Write(Address, _bytes, 2) == TwoWireResult.Done;
        }

        // Two decimal digits in a byte; -1 where a half is none.
        private static int Number(byte digits) => (digits & 0x0F) > 9 || digits >> 4 > 9 ? -1 : ((digits >> 4) * 10) + (digits & 0x0F);

        private static byte Digits(int number) => (byte)(((number / 10) << 4) | (number % 10));
    }
}
