using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Records;

namespace LoggerBox.BoardParts.Settings
{
    /// <summary>
    /// A block that survives a cut while it is written: two copies, each with a sequence number and a CRC. The newer good one wins, and
    /// the other is the one that is written next.
    /// </summary>
    public sealed class TwoCopies
    {
        public const int Longest = 4096;

        // Mark, sequence, length; the CRC-32 of all before it stands at the end.
        private const int HeaderLength = 10;
        private const int CrcLength = 4;
        private const uint Mark = 0x5347424C;

        private readonly IFlashCopy _first;
        private readonly IFlashCopy _second;
        private readonly byte[] _bytes = new byte[Longest];
        private readonly ByteReader _reader;
        private readonly ByteWriter _writer;
        private uint _sequence;
        private bool _nextIsSecond;

        public TwoCopies(IFlashCopy first, IFlashCopy second)
        {
            _first = first;
            _second = second;
            _reader = new ByteReader(_bytes);
            _writer = new ByteWriter(_bytes);
        }

        /// <summary>One copy was there and not good at the last <see cref="Load"/>: it was being written, or is worn.</summary>
        public bool OneWasDamaged { get; private set; }

        /// <summary>The newer good copy's content; null where neither is good. Good until the next call.</summary>
        public ByteReader? Load()
        {
            int first = Look(_first, out uint firstSequence);
            int second = Look(_second, out uint secondSequence);
            OneWasDamaged = first < 0 || second < 0;
            bool takeSecond = second > 0 && (first <= 0 || secondSequence - firstSequence < 0x80000000);
            if (first <= 0 && second <= 0)
            {
                _sequence = 0;
                return null;
            }

            int length = takeSecond ? second : Look(_first, out firstSequence);
            _sequence = takeSecond ? secondSequence : firstSequence;
            _nextIsSecond = !takeSecond;
            _reader.Restart(HeaderLength, length);
            return _reader;
        }

        /// <summary>Where the content goes before <see cref="Save"/>.</summary>
        public ByteWriter Begin()
        {
            _writer.Restart(HeaderLength, Longest - CrcLength);
            return _writer;
        }

        /// <summary>Writes what was put into <see cref="Begin"/>'s writer over the older copy. False when it is not sure to be there.</summary>
        public bool Save()
        {
            int end = _writer.Position;
            if (_writer.Overflowed)
            {
                return false;
            }

            _writer.Restart(0, Longest);
            _writer.WriteUInt32(Mark);
            _writer.WriteUInt32(_sequence + 1);
            _writer.WriteUInt16((ushort)(end - HeaderLength));
            _writer.Position = end;
            _writer.WriteUInt32(Crc32.Of(_bytes, 0, end));
            if (!(_nextIsSecond ? _second : _first).Write(_bytes, end + CrcLength))
            {
                return false;
            }

            _sequence++;
            _nextIsSecond = !_nextIsSecond;
            return true;
        }

        // Length of a good copy's content, 0 where nothing is, -1 where it is damaged.
        private int Look(IFlashCopy copy, out uint sequence)
        {
            int count = copy.Read(_bytes);
            _reader.Restart(0, count);
            uint mark = _reader.ReadUInt32();
            sequence = _reader.ReadUInt32();
            int length = _reader.ReadUInt16();
            int end = HeaderLength + length;
            if (count == 0)
            {
                return 0;
            }

            if (_reader.TooShort || mark != Mark || length == 0 || end + CrcLength > count)
            {
                return -1;
            }

            _reader.Position = end;
            return _reader.ReadUInt32() == Crc32.Of(_bytes, 0, end) ? length : -1;
        }
    }
}
