using System.Device.Gpio;
using LoggerBox.Capture.Board;

namespace LoggerBox.BoardEsp32
{
    /// <summary>The chip's pulse counter. Count and time are taken in one native call, a few microseconds apart.</summary>
    internal sealed class HardwarePulseCounter : IPulseCounter
    {
        // The number goes to the chip in nanoseconds, whatever its name says: the most that the chip's filter can do.
        private const ushort FilterNanoseconds = 1023;

        // A time span counts tenths of a microsecond.
        private const int TicksPerMicrosecond = 10;

        private readonly GpioPulseCounter _counter;

        public HardwarePulseCounter()
        {
            _counter = new GpioPulseCounter(Pins.Pickup);
            _counter.Polarity = GpioPulsePolarity.Rising;
            _counter.FilterPulses = FilterNanoseconds;
            _counter.Start();
        }

        public void Read(out long count, out long microseconds)
        {
            GpioPulseCount pulses = _counter.Read();
            count = pulses.Count;
            microseconds = pulses.RelativeTime.Ticks / TicksPerMicrosecond;
        }
    }
}
