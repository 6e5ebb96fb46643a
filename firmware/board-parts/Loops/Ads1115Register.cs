namespace LoggerBox.BoardParts.Loops
{
    /// <summary>Register arithmetic of the ADS1115 (data sheet SBAS444): what is written, and what a word that was read says.</summary>
    public static class Ads1115Register
    {
        public const byte Conversion = 0;
        public const byte Configuration = 1;

        /// <summary>Bit 15 of the configuration: begins one conversion when written, says that none runs when read.</summary>
        public const int StatusBit = 0x8000;

        /// <summary>
        /// AIN0 against AIN1 (both ends of the shunt), +-4.096 V (125 uV a count), free-running, 250 a second, comparator off. Two volts of
        /// range would end at 20.48 mA, below what a shorted loop carries.
        /// </summary>
        public const int FreeRunning = 0x02A3;

        /// <summary>Longest time to the first conversion: 4 ms, the chip's clock being 10 % slow, and its wake-up.</summary>
        public const long FirstConversionMicroseconds = 5000;

        /// <summary>The chip works as it was told; after a dip of its supply it is back at its own range and stands still.</summary>
        public static bool IsFreeRunning(int configuration) => (configuration & ~StatusBit & 0xFFFF) == FreeRunning;

        public static int Word(byte high, byte low) => (high << 8) | low;

        /// <summary>Counts of 125 uV, -32767 to 32767: the chip's lowest code is the same voltage, and stands for a missing reading elsewhere.</summary>
        public static int Counts(int word)
        {
            int counts = (short)word;
            return counts == short.MinValue ? -short.MaxValue : counts;
        }
    }
}
