using LoggerBox.Protocol.Encoding;

namespace LoggerBox.Protocol.Records
{
    /// <summary>
    /// Up to 128 sample sets, column by column, that are read without any other record. One object is filled, written and filled again.
    /// </summary>
    public sealed class SampleBlock : IPartedRecord
    {
        public const int Capacity = 128;
        public const byte PlainColumns = 0;
        public const byte EncodedColumns = 1;

        /// <summary>What a stored speed of 0 stands for: the column reaches from 0 to 6553.4 rpm.</summary>
        public const int SpeedMiddleTenths = 32767;

        public long FirstMicroseconds;

        /// <summary>Time between sets; 0 where each set has its own time.</summary>
        public uint IntervalMicroseconds;

        public int Count;

        // When the next set of an evenly timed block is; never, where there is another question than this.
        private long next = Never;
        private long interval;

        private readonly uint[] offsetsMicroseconds = new uint[Capacity];
        private readonly short[] speeds = new short[Capacity];
        private readonly short[] mains = new short[Capacity];
        private readonly short[] clutches = new short[Capacity];
        private readonly short[] converters = new short[Capacity];
        private readonly short[][] columns;
        private readonly BlockHead head = new BlockHead();
        private readonly BlockEncoder encoder;
        private readonly BlockDecoder decoder;
        private const long Never = long.MinValue;

        // The first part goes on until all columns are encoded; then come the head and each column.
        private const int HeadPart = 1;
        private int part;

        public SampleBlock()
        {
            columns = new[] { speeds, mains, clutches, converters };
            encoder = new BlockEncoder(columns);
            decoder = new BlockDecoder(columns);
        }

        public RecordCode Code => RecordCode.SampleBlock;

        public bool IsFull => Count == Capacity;

        // Copies of what is encoded already, or little else.
        public bool IsNearlyWritten => part >= HeadPart && (part == HeadPart ? !encoder.HasRaw && IntervalMicroseconds != 0 : head.Encoding == EncodedColumns && !encoder.HasRaw);

        public int PartsLeft => encoder.PartsLeft;

        /// <summary>Begins an empty block; interval 0 for sets that come unevenly.</summary>
        public void Begin(uint intervalMicroseconds)
        {
            IntervalMicroseconds = intervalMicroseconds;
            Count = 0;
            next = Never;
            interval = 0;
            encoder.Begin();
        }

        /// <summary>
        /// False, and nothing added, when the block is full or the set's time does not continue it: write the block and begin another.
        /// </summary>
        public bool TryAdd(SampleSet sample)
        {
            int at = Count;
            int count = at + 1;
            if ((sample.Microseconds != next || at == Capacity) && !TryFollow(at, sample.Microseconds))
            {
                return false;
            }

            next += interval;
            Count = count;

            // Values outside a column are no readings: one that is wrong would be worse than none. A missing speed is so far from the middle, too.
            int[] values = sample.Values;
            int value = values[Channel.Speed];
            int fromMiddle = value - SpeedMiddleTenths;
            speeds[at] = fromMiddle == (short)fromMiddle ? (short)fromMiddle : (short)SampleSet.Missing;
            value = values[Channel.Main];
            mains[at] = value == (short)value ? (short)value : (short)SampleSet.Missing;
            value = values[Channel.Clutch];
            clutches[at] = value == (short)value ? (short)value : (short)SampleSet.Missing;
            value = values[Channel.Converter];
            converters[at] = value == (short)value ? (short)value : (short)SampleSet.Missing;
            encoder.Add(count);
            return true;
        }

        /// <summary>
        /// Encodes so many of the values that have come, at most; returns how many it was the work of. What is left when the block is written is encoded then.
        /// </summary>
        public int Encode(int values) => encoder.Write(values);

        /// <summary>Some may be there to be encoded.</summary>
        public bool MayEncode => encoder.MayWrite;

        /// <summary>With the newest set predictors were tried, which takes its time.</summary>
        public bool HasTried => encoder.HasTried;

        /// <summary>Begins to encode, however little has come.</summary>
        public void BeginEncoding() => encoder.Choose();

        private bool TryFollow(int at, long microseconds)
        {
            if (at == 0)
            {
                FirstMicroseconds = microseconds;
                interval = IntervalMicroseconds;
                next = interval > 0 ? microseconds : Never;
            }

            if (at == Capacity || interval > 0)
            {
                return at == 0;
            }

            long offset = microseconds - FirstMicroseconds;
            offsetsMicroseconds[at] = (uint)offset;
            return offset >= 0 && offset <= uint.MaxValue;
        }

        public void CopyTo(int index, SampleSet sample)
        {
            sample.Microseconds = FirstMicroseconds
                + (IntervalMicroseconds == 0 ? offsetsMicroseconds[index] : (long)IntervalMicroseconds * index);
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                sample.Values[channel] = FromColumn(channel, columns[channel][index]);
            }
        }

        public void Write(ByteWriter writer)
        {
            BeginWriting();
            while (!WritePart(writer))
            {
            }
        }

        public void BeginWriting()
        {
            CountForEncoding();
            part = 0;
        }

        public bool WritePart(ByteWriter writer)
        {
            if (part < HeadPart)
            {
                part += encoder.Finish() ? 1 : 0;
                return false;
            }

            if (part == HeadPart)
            {
                WriteHead(writer);
            }
            else
            {
                WriteColumn(writer, part - HeadPart - 1);
            }

            part++;
            return part == HeadPart + Channel.Count + 1;
        }

        public bool TryRead(ByteReader reader)
        {
            Begin(0);
            if (!head.TryRead(reader))
            {
                return false;
            }

            FirstMicroseconds = head.FirstMicroseconds;
            IntervalMicroseconds = head.IntervalMicroseconds;
            for (int i = 0; IntervalMicroseconds == 0 && i < head.Count; i++)
            {
                offsetsMicroseconds[i] = reader.ReadUInt32();
            }

            bool known = true;
            if (head.Encoding == EncodedColumns)
            {
                known = decoder.TryRead(reader, head.Count);
            }
            else
            {
                ReadPlain(reader);
            }

            Count = known && !reader.TooShort ? head.Count : 0;
            interval = IntervalMicroseconds;
            next = interval > 0 ? FirstMicroseconds + (interval * Count) : Never;
            return known && !reader.TooShort;
        }

        private void WriteHead(ByteWriter writer)
        {
            head.FirstMicroseconds = FirstMicroseconds;
            head.IntervalMicroseconds = IntervalMicroseconds;
            head.Count = Count;
            head.Encoding = encoder.Length < Channel.Count * Count * 2 ? EncodedColumns : PlainColumns;
            head.Write(writer);
            for (int i = 0; IntervalMicroseconds == 0 && i < Count; i++)
            {
                writer.WriteUInt32(offsetsMicroseconds[i]);
            }

            if (head.Encoding == EncodedColumns)
            {
                encoder.CopyModesTo(writer);
            }
        }

        private void WriteColumn(ByteWriter writer, int channel)
        {
            if (head.Encoding == EncodedColumns)
            {
                encoder.CopyTo(writer, channel);
            }
            else
            {
                writer.WriteInt16s(columns[channel], Count);
            }
        }

        private void ReadPlain(ByteReader reader)
        {
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                short[] column = columns[channel];
                for (int i = 0; i < head.Count; i++)
                {
                    column[i] = reader.ReadInt16();
                }
            }
        }

        // Sets that were read are counted only when they are to be written again.
        private void CountForEncoding()
        {
            while (encoder.Count < Count)
            {
                encoder.Add(encoder.Count + 1);
            }
        }

        // Speed is never negative, and a pickup set for half its pulses shows 5000 rpm and more: its column counts from the middle.
        private static int FromColumn(int channel, short stored) =>
            channel == Channel.Speed && stored != SampleSet.Missing ? stored + SpeedMiddleTenths : stored;
    }
}
