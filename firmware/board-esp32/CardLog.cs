using System;
using System.IO;
using LoggerBox.BoardParts.Card;
using nanoFramework.Hardware.Esp32;
using nanoFramework.System.IO.FileSystem;

namespace LoggerBox.BoardEsp32
{
    /// <summary>
    /// The log on the SD card, on a FAT volume that any PC reads. It is made once, filled with zeros under another name, and never grows:
    /// after that a write touches neither directory nor allocation table. The platform's driver syncs the card at each write.
    /// </summary>
    internal sealed class CardLog : ICardFile
    {
        private const string Name = "D:\\sessions.log";
        private const string Unfinished = "D:\\sessions.new";

        // About thirty hours at 50 sets a second.
        private const long Length = 16 * 1024 * 1024;
        private const int FillBlock = 4096;
        private const int BlocksAtOnce = 32;

        private readonly SDCard _card;
        private FileStream? _file;
        private byte[]? _zeros;

        public CardLog()
        {
            Configuration.SetPinFunction(Pins.CardDataOut, DeviceFunction.SPI1_MOSI);
            Configuration.SetPinFunction(Pins.CardDataIn, DeviceFunction.SPI1_MISO);
            Configuration.SetPinFunction(Pins.CardClock, DeviceFunction.SPI1_CLOCK);
            SDCardSpiParameters parameters = new SDCardSpiParameters();
            parameters.spiBus = 1;
            parameters.chipSelectPin = Pins.CardSelect;
            _card = new SDCard(parameters);
        }

        public bool IsBeingMade { get; private set; }

        public long Open()
        {
            try
            {
                Mount();
                if (!File.Exists(Name) && !TryMake())
                {
                    return 0;
                }

                IsBeingMade = false;
                _zeros = null;
                _file = new FileStream(Name, FileMode.Open, FileAccess.ReadWrite, FileShare.Read);
                return _file.Length;
            }
            catch (Exception)
            {
                IsBeingMade = false;
                Close();
                return 0;
            }
        }

        public int Read(long offset, byte[] buffer, int bufferOffset, int count)
        {
            try
            {
                _file!.Seek(offset, SeekOrigin.Begin);
                return _file.Read(buffer, bufferOffset, count);
            }
            catch (Exception)
            {
                return 0;
            }
        }

        public bool Write(long offset, byte[] buffer, int bufferOffset, int count)
        {
            try
            {
                _file!.Seek(offset, SeekOrigin.Begin);
                _file.Write(buffer, bufferOffset, count);
                _file.Flush();
                return true;
            }
            catch (Exception)
            {
                return false;
            }
        }

        public void Close()
        {
            try
            {
                _file?.Dispose();
                _file = null;
                if (_card.IsMounted)
                {
                    _card.Unmount();
                }
            }
            catch (Exception)
            {
                // A card that was pulled cannot be unmounted; the next Open mounts what is there.
                _file = null;
            }
        }

        private void Mount()
        {
            if (!_card.IsMounted)
            {
                _card.Mount();
            }
        }

        // A part at each call, so that the board goes on meanwhile. Only a whole file gets the log's name: a log is never begun over.
        private bool TryMake()
        {
            IsBeingMade = true;
            _zeros ??= new byte[FillBlock];
            FileStream file = new FileStream(Unfinished, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
            long written = file.Length;
            file.Seek(written, SeekOrigin.Begin);
            for (int i = 0; i < BlocksAtOnce && written < Length; i++)
            {
                file.Write(_zeros, 0, FillBlock);
                written += FillBlock;
            }

            file.Dispose();
            if (written >= Length)
            {
                File.Move(Unfinished, Name);
            }

            return written >= Length;
        }
    }
}
