// Signatures of nanoFramework.System.Device.I2c 1.1.29, compared with github.com/nanoframework/System.Device.I2c at f0f98ec.
// Only what the firmware uses; every body throws.
[assembly: System.Reflection.AssemblyVersion("1.1.29.0")]

namespace System.Device.I2c
{
    public class I2cDevice : IDisposable
    {
        public I2cDevice(I2cConnectionSettings settings) => throw new NotImplementedException();

        public I2cTransferResult Write(SpanByte buffer) => throw new NotImplementedException();

        public I2cTransferResult WriteRead(SpanByte writeBuffer, SpanByte readBuffer) => throw new NotImplementedException();

        public void Dispose() => throw new NotImplementedException();
    }

    public sealed class I2cConnectionSettings
    {
        public I2cConnectionSettings(int busId, int deviceAddress, I2cBusSpeed busSpeed) => throw new NotImplementedException();
    }

    public struct I2cTransferResult
    {
        public uint BytesTransferred => throw new NotImplementedException();

        public I2cTransferStatus Status => throw new NotImplementedException();
    }

    public enum I2cBusSpeed
    {
        StandardMode,
        FastMode,
        FastModePlus,
    }

    public enum I2cTransferStatus
    {
        UnknownError,
        FullTransfer,
        ClockStretchTimeout,
        PartialTransfer,
        SlaveAddressNotAcknowledged,
    }
}
