// Signatures of nanoFramework.System.Device.Gpio 1.1.62, compared with github.com/nanoframework/System.Device.Gpio at cd99158.
// Only what the firmware uses; every body throws.
[assembly: System.Reflection.AssemblyVersion("1.1.62.0")]

namespace System.Device.Gpio
{
    public sealed class GpioController : IDisposable
    {
        public GpioController() => throw new NotImplementedException();

        public GpioPin OpenPin(int pinNumber, PinMode mode) => throw new NotImplementedException();

        public void ClosePin(int pinNumber) => throw new NotImplementedException();

        public void Dispose() => throw new NotImplementedException();
    }

    public sealed class GpioPin : IDisposable
    {
        private GpioPin() => throw new NotImplementedException();

        public PinValue Read() => throw new NotImplementedException();

        public void Write(PinValue value) => throw new NotImplementedException();

        public void Dispose() => throw new NotImplementedException();
    }

    public enum PinMode
    {
        Input,
        InputPullDown,
        InputPullUp,
        Output,
        OutputOpenDrain,
        OutputOpenDrainPullUp,
        OutputOpenSource,
        OutputOpenSourcePullDown,
    }

    public enum PinNumberingScheme
    {
        Logical,
        Board,
    }

    public readonly struct PinValue
    {
        public static PinValue High => throw new NotImplementedException();

        public static PinValue Low => throw new NotImplementedException();

        public static implicit operator PinValue(bool value) => throw new NotImplementedException();

        public static explicit operator bool(PinValue value) => throw new NotImplementedException();
    }
}
