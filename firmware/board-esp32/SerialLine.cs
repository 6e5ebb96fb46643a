using System.IO.Ports;
using LoggerBox.BoardParts.Link;
using LoggerBox.Capture.Link;
using nanoFramework.Hardware.Esp32;

namespace LoggerBox.BoardEsp32
{
    /// <summary>
    /// The second USB socket. A long write keeps its thread waiting on the platform, so the sampling thread only puts bytes into a queue,
    /// and a thread of its own sends them.
    /// </summary>
    internal sealed class SerialLine : ISerialPort
    {
        private const int BaudRate = 115200;

        // The driver throws away everything that waits when its buffer overflows.
        private const int ReceiveBuffer = 4096;
        private const int QueueLength = 2048;
        private const int SentAtOnce = 128;

        private readonly SerialPort _port;
        private readonly ByteQueue _queue = new ByteQueue(QueueLength);
        private readonly byte[] _part = new byte[SentAtOnce];

        public SerialLine()
        {
            Configuration.SetPinFunction(Pins.SerialTransmit, DeviceFunction.COM1_TX);
            Configuration.SetPinFunction(Pins.SerialReceive, DeviceFunction.COM1_RX);
            _port = new SerialPort("COM1", BaudRate, Parity.None, 8, StopBits.One);
            _port.ReadBufferSize = ReceiveBuffer;
            _port.Open();
        }

        public int Read(byte[] buffer, int offset, int count)
        {
            int waiting = _port.BytesToRead;
            return waiting == 0 ? 0 : _port.Read(buffer, offset, waiting < count ? waiting : count);
        }

        public int Write(byte[] buffer, int offset, int count) => _queue.Put(buffer, offset, count);

        /// <summary>Sends what waits; false when there was nothing. For the sending thread alone.</summary>
        public bool Send()
        {
            int count = _queue.Take(_part, 0, SentAtOnce);
            if (count > 0)
            {
                _port.Write(_part, 0, count);
            }

            return count > 0;
        }
    }
}
