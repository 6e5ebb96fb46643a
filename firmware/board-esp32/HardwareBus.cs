using System;
using System.Device.Gpio;
using System.Device.I2c;
using LoggerBox.BoardParts.Clock;
using LoggerBox.BoardParts.Loops;
using LoggerBox.BoardParts.TwoWire;
using nanoFramework.Hardware.Esp32;

namespace LoggerBox.BoardEsp32
{
    /// <summary>The I2C bus of converters and clock. The platform returns errors instead of throwing them: each status is looked at.</summary>
    internal sealed class HardwareBus : ITwoWire
    {
        private const int Bus = 1;

        // A chip that was cut off in the middle of a byte lets go of the data line within nine clocks.
        private const int ClocksToFree = 9;

        private readonly int[] _addresses = { LoopInputs.FirstAddress, LoopInputs.FirstAddress + 1, LoopInputs.FirstAddress + 2, Ds3231.Address };
        private readonly I2cDevice[] _devices = new I2cDevice[4];
        private readonly GpioController _pins;
        private readonly byte[] _register = new byte[1];

        public HardwareBus(GpioController pins)
        {
            _pins = pins;
            Open();
        }

        public TwoWireResult Write(int address, byte[] bytes, int count)
        {
            try
            {
                return ResultOf(Device(address).Write(new SpanByte(bytes, 0, count)));
            }
            catch (Exception)
            {
                return TwoWireResult.BusFailed;
            }
        }

        public TwoWireResult ReadRegister(int address, byte register, byte[] into, int count)
        {
            try
            {
                _register[0] = register;
                return ResultOf(Device(address).WriteRead(new SpanByte(_register), new SpanByte(into, 0, count)));
            }
            catch (Exception)
            {
                return TwoWireResult.BusFailed;
            }
        }

        public void Recover()
        {
            try
            {
                for (int i = 0; i < _devices.Length; i++)
                {
                    _devices[i].Dispose();
                }

                ClockOut();
                Open();
            }
            catch (Exception)
            {
                // The next transfer fails too, and the bus is left alone for longer.
                return;
            }
        }

        private void Open()
        {
            Configuration.SetPinFunction(Pins.BusData, DeviceFunction.I2C1_DATA);
            Configuration.SetPinFunction(Pins.BusClock, DeviceFunction.I2C1_CLOCK);
            for (int i = 0; i < _devices.Length; i++)
            {
                _devices[i] = new I2cDevice(new I2cConnectionSettings(Bus, _addresses[i], I2cBusSpeed.FastMode));
            }
        }

        private void ClockOut()
        {
            GpioPin data = _pins.OpenPin(Pins.BusData, PinMode.OutputOpenDrain);
            GpioPin clock = _pins.OpenPin(Pins.BusClock, PinMode.OutputOpenDrain);
            data.Write(PinValue.High);
            for (int i = 0; i < ClocksToFree; i++)
            {
                clock.Write(PinValue.Low);
                clock.Write(PinValue.High);
            }

            // A stop: data rises while the clock is high.
            clock.Write(PinValue.Low);
            data.Write(PinValue.Low);
            clock.Write(PinValue.High);
            data.Write(PinValue.High);
            _pins.ClosePin(Pins.BusData);
            _pins.ClosePin(Pins.BusClock);
        }

        private I2cDevice Device(int address)
        {
            int index = address == Ds3231.Address ? _devices.Length - 1 : address - LoopInputs.FirstAddress;
            return _devices[index];
        }

        private static TwoWireResult ResultOf(I2cTransferResult result) =>
            result.Status == I2cTransferStatus.FullTransfer ? TwoWireResult.Done
            : result.Status == I2cTransferStatus.SlaveAddressNotAcknowledged ? TwoWireResult.NoAnswer
            : TwoWireResult.BusFailed;
    }
}
