namespace LoggerBox.BoardEsp32
{
    /// <summary>
    /// GPIO numbers of an ESP32-S3 board with two USB sockets (hardware-notes/channels.md). Left alone: 0, 3, 45 and 46 (start-up), 19 and
    /// 20 (USB), 26 to 37 (flash and PSRAM).
    /// </summary>
    internal static class Pins
    {
        public const int Pickup = 4;
        public const int Forward = 5;
        public const int Reverse = 6;
        public const int Button = 7;
        public const int BusData = 8;
        public const int BusClock = 9;
        public const int CardSelect = 10;
        public const int CardDataOut = 11;
        public const int CardClock = 12;
        public const int CardDataIn = 13;
        public const int DisplayClock = 14;
        public const int SupplyLow = 15;
        public const int Sounder = 16;
        public const int Lamp = 18;
        public const int DisplayData = 21;

        // The second USB socket's converter.
        public const int SerialTransmit = 43;
        public const int SerialReceive = 44;
    }
}
