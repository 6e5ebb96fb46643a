namespace LoggerBox.Protocol.Framing
{
    /// <summary>Undoes <see cref="Cobs"/>, fed byte by byte, into a buffer of fixed size.</summary>
    public sealed class CobsDecoder
    {
        /// <summary>What was decoded; valid from the delimiter that ended it to the next byte accepted.</summary>
        public readonly byte[] Decoded;

        public int DecodedLength;

        /// <summary>Bytes since the last delimiter, as they came from the line.</summary>
        public int StuffedLength;

        private readonly byte delimiter;
        private int runLeft;
        private bool zeroDue;
        private bool ended;
        private bool overflowed;

        public CobsDecoder(int capacity, byte delimiter)
        {
            Decoded = new byte[capacity];
            this.delimiter = delimiter;
        }

        /// <summary>True when this byte was the delimiter; whether the stretch before it was sound says <see cref="IsSound"/>.</summary>
        public bool Accept(byte wire)
        {
            if (ended)
            {
                Clear();
            }

            if (wire == delimiter)
            {
                ended = true;
                return true;
            }

            StuffedLength++;
            int value = wire ^ delimiter;
            if (runLeft > 0)
            {
                runLeft--;
                Put((byte)value);
            }
            else
            {
                StartRun(value);
            }

            return false;
        }

        /// <summary>
        /// Takes bytes up to the delimiter, that included, or all from..to where there is none: the same as one by one, and several times as fast.
        /// Returns where it stopped; whether at a delimiter says <see cref="HasEnded"/>.
        /// </summary>
        public int Accept(byte[] wire, int from, int to)
        {
            int at = from;
            while (at < to)
            {
                at = ended ? at : TakeRun(wire, at, to);
                if (at < to && Accept(wire[at++]))
                {
                    return at;
                }
            }

            return at;
        }

        /// <summary>The last byte accepted was the delimiter.</summary>
        public bool HasEnded => ended;

        /// <summary>The stretch fitted into the buffer and no run was cut short.</summary>
        public bool IsSound => !overflowed && runLeft == 0;

        // What is here of a run and fits, up to a delimiter that cuts it short.
        private int TakeRun(byte[] wire, int from, int to)
        {
            int count = to - from < runLeft ? to - from : runLeft;
            count = count < Decoded.Length - DecodedLength ? count : Decoded.Length - DecodedLength;
            int end = from + count;
            byte[] decoded = Decoded;
            int write = DecodedLength;
            int at = from;
            while (at < end && wire[at] != delimiter)
            {
                decoded[write++] = (byte)(wire[at++] ^ delimiter);
            }

            StuffedLength += at - from;
            runLeft -= at - from;
            DecodedLength = write;
            return at;
        }

        private void StartRun(int code)
        {
            // The zero that a run stands for is written only when another run follows: the last one stands for the end.
            if (zeroDue)
            {
                Put(0);
            }

            runLeft = code - 1;
            zeroDue = code != Cobs.LongestRun + 1;
        }

        private void Put(byte value)
        {
            if (DecodedLength == Decoded.Length)
            {
                overflowed = true;
                return;
            }

            Decoded[DecodedLength++] = value;
        }

        private void Clear()
        {
            DecodedLength = 0;
            StuffedLength = 0;
            runLeft = 0;
            zeroDue = false;
            ended = false;
            overflowed = false;
        }
    }
}
