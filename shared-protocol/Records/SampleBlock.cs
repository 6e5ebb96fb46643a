namespace LoggerBox.Protocol.Records
{
    /// <summary>Up to 128 sample sets, column by column. One object is filled, written and filled again.</summary>
    public sealed class SampleBlock : IRecord
    {
        public const int Capacity = 128;
        public const byte PlainColumns = 0;

        /// <summary>Bytes before the columns.</summary>
        public const int FixedLength = 15;

        /// <summary>What a stored speed of 0 stands for: the column reaches from 0 to 6553.4 rpm.</summary>
        public const int SpeedMiddleTenths = 32767;

        private const byte UnevenFlag = 1;

        public long FirstMicroseconds;

        /// <summary>Time between sets; 0 where each set has its own time.</summary>
        public uint IntervalMicroseconds;

        public int Count;

        private readonly uint[] offsetsMicroseconds = new uint[Capacity];
        private readonly short[][] columns = { new short[Capacity], new short[Capacity], new short[Capacity], new short[Capacity] };

        public RecordCode Code => RecordCode.SampleBlock;

        public bool IsFull => Count == Capacity;

        /// <summary>Begins an empty block; interval 0 for sets that come unevenly.</summary>
        public void Begin(uint intervalMicroseconds)
        {
            IntervalMicroseconds = intervalMicroseconds;
            Count = 0;
        }

        /// <summary>
        /// False, and nothing added, when the block is full or the set's time does not continue it: write the block and begin another.
        /// </summary>
        public bool TryAdd(SampleSet sample)
        {
            if (Count == 0)
            {
                FirstMicroseconds = sample.Microseconds;
            }

            long offset = sample.Microseconds - FirstMicroseconds;
            bool continues = IntervalMicroseconds == 0
                ? offset >= 0 && offset <= uint.MaxValue
                : offset == (long)IntervalMicroseconds * Count;
            if (IsFull || !continues)
            {
                return false;
            }

            offsetsMicroseconds[Count] = (uint)offset;
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                columns[channel][Count] = ToColumn(channel, sample.Values[channel]);
            }

            Count++;
            return true;
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
            writer.WriteInt64(FirstMicroseconds);
            writer.WriteUInt32(IntervalMicroseconds);
            writer.WriteByte((byte)Count);
            writer.WriteByte(PlainColumns);
            writer.WriteByte(IntervalMicroseconds == 0 ? UnevenFlag : (byte)0);
            for (int i = 0; IntervalMicroseconds == 0 && i < Count; i++)
            {
                writer.WriteUInt32(offsetsMicroseconds[i]);
            }

            for (int channel = 0; channel < Channel.Count; channel++)
            {
                short[] column = columns[channel];
                for (int i = 0; i < Count; i++)
                {
                    writer.WriteInt16(column[i]);
                }
            }
        }

        public bool TryRead(ByteReader reader)
        {
            FirstMicroseconds = reader.ReadInt64();
            IntervalMicroseconds = reader.ReadUInt32();
            Count = reader.ReadByte();
            byte encoding = reader.ReadByte();
            bool uneven = (reader.ReadByte() & UnevenFlag) != 0;
            if (Count > Capacity || encoding != PlainColumns || uneven != (IntervalMicroseconds == 0))
            {
                Count = 0;
                return false;
            }

            for (int i = 0; uneven && i < Count; i++)
            {
                offsetsMicroseconds[i] = reader.ReadUInt32();
            }

            for (int channel = 0; channel < Channel.Count; channel++)
            {
                short[] column = columns[channel];
                for (int i = 0; i < Count; i++)
                {
                    column[i] = reader.ReadInt16();
                }
            }

            return !reader.TooShort;
        }

        // Speed is never negative, and a pickup set for half its pulses shows 5000 rpm and more: its column counts from the middle.
        // Values outside a column are no readings: one that is wrong would be worse than none.
        private static short ToColumn(int channel, int value)
        {
            int stored = channel == Channel.Speed && value != SampleSet.Missing ? value - SpeedMiddleTenths : value;
            return stored > short.MaxValue || stored <= short.MinValue ? (short)SampleSet.Missing : (short)stored;
        }

        private static int FromColumn(int channel, short stored) =>
            channel == Channel.Speed && stored != SampleSet.Missing ? stored + SpeedMiddleTenths : stored;
    }
}
