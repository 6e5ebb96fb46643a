// Signatures of nanoFramework.Hardware.Esp32 1.6.40, compared with github.com/nanoframework/nanoFramework.Hardware.Esp32 at 579dbaf.
// Only what the firmware uses; every body throws.
[assembly: System.Reflection.AssemblyVersion("1.6.40.0")]

namespace System.Device.Gpio
{
    public sealed class GpioPulseCounter : IDisposable
    {
        public GpioPulseCounter(int pinNumberA, int pinNumberB = -1) => throw new NotImplementedException();

        public GpioPulsePolarity Polarity { get => throw new NotImplementedException(); set => throw new NotImplementedException(); }

        public ushort FilterPulses { get => throw new NotImplementedException(); set => throw new NotImplementedException(); }

        public GpioPulseCount Read() => throw new NotImplementedException();

        public void Start() => throw new NotImplementedException();

        public void Dispose() => throw new NotImplementedException();
    }

    public struct GpioPulseCount
    {
        public long Count;
        public TimeSpan RelativeTime;
    }

    public enum GpioPulsePolarity
    {
        Both,
        Falling,
        Rising,
    }
}

namespace nanoFramework.Hardware.Esp32
{
    using global::System;

    public class Configuration
    {
        public static void SetPinFunction(int pin, DeviceFunction value) => throw new NotImplementedException();
    }

    public class HighResTimer
    {
        private HighResTimer() => throw new NotImplementedException();

        public static ulong GetCurrent() => throw new NotImplementedException();
    }

    public class NativeMemory
    {
        public enum MemoryType
        {
            All,
            Internal,
            SpiRam,
        }

        public static void GetMemoryInfo(MemoryType memType, out uint totalSize, out uint totalFreeSize, out uint largestFreeBlock) => throw new NotImplementedException();
    }

    public enum DeviceFunction
    {
        SPI1_MOSI = 0x10100,
        SPI1_MISO = 0x10101,
        SPI1_CLOCK = 0x10102,
        I2C1_DATA = 0x20100,
        I2C1_CLOCK = 0x20101,
        COM1_TX = 0x30100,
        COM1_RX = 0x30101,
    }
}
