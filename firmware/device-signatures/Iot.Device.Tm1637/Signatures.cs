// Signatures of nanoFramework.Iot.Device.Tm1637 1.2.862, compared with github.com/nanoframework/nanoFramework.IoT.Device at 122ebb1.
// The number 862 is the one that the bindings of that commit name for each other; for this package it was not looked up.
// Only what the firmware uses; every body throws.
[assembly: System.Reflection.AssemblyVersion("1.2.862.0")]

namespace Iot.Device.Tm1637
{
    using global::System;
    using global::System.Device.Gpio;

    public sealed class Tm1637 : IDisposable
    {
        public Tm1637(int pinClk, int pinDio, PinNumberingScheme pinNumberingScheme = PinNumberingScheme.Logical, GpioController gpioController = null, bool shouldDispose = true) =>
            throw new NotImplementedException();

        public bool ScreenOn { get => throw new NotImplementedException(); set => throw new NotImplementedException(); }

        public byte Brightness { get => throw new NotImplementedException(); set => throw new NotImplementedException(); }

        public void Display(byte characterPosition, Character rawData) => throw new NotImplementedException();

        public void ClearDisplay() => throw new NotImplementedException();

        public void Dispose() => throw new NotImplementedException();
    }

    [Flags]
    public enum Character : byte
    {
        Nothing = 0,
    }
}
