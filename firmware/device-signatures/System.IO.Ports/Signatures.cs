// Signatures of nanoFramework.System.IO.Ports 1.1.139, compared with github.com/nanoframework/System.IO.Ports at ba564c9.
// Only what the firmware uses; every body throws.
[assembly: System.Reflection.AssemblyVersion("1.1.139.0")]

namespace System.IO.Ports
{
    public sealed class SerialPort : IDisposable
    {
        public SerialPort(string portName, int baudRate = 9600, Parity parity = Parity.None, int dataBits = 8, StopBits stopBits = StopBits.One) => throw new NotImplementedException();

        public int BytesToRead => throw new NotImplementedException();

        public int ReadBufferSize { get => throw new NotImplementedException(); set => throw new NotImplementedException(); }

        public int WriteTimeout { get => throw new NotImplementedException(); set => throw new NotImplementedException(); }

        public void Open() => throw new NotImplementedException();

        public int Read(byte[] buffer, int offset, int count) => throw new NotImplementedException();

        public void Write(byte[] buffer, int offset, int count) => throw new NotImplementedException();

        public void Dispose() => throw new NotImplementedException();
    }

    public enum Parity
    {
        None = 0,
        Odd = 1,
        Even = 2,
    }

    public enum StopBits
    {
        One = 1,
        Two = 2,
        OnePointFive = 3,
    }
}
