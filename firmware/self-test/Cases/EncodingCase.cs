using LoggerBox.Protocol.Records;

namespace LoggerBox.SelfTest.Cases
{
    /// <summary>Blocks of every kind of column, encoded, decoded and compared.</summary>
    internal sealed class EncodingCase : SelfTestCase
    {
        private const int Shapes = 8;

        private readonly SampleBlock block = new SampleBlock();
        private readonly SampleBlock read = new SampleBlock();
        private readonly SampleSet given = new SampleSet();
        private readonly SampleSet back = new SampleSet();
        private readonly RecordWriter writer = new RecordWriter();
        private readonly Noise noise = new Noise(17);
        private int level;

        public EncodingCase()
            : base("encoding")
        {
        }

        public override void Execute()
        {
            for (int n = 0; n < 5 * Shapes; n++)
            {
                int sets = n % 5 == 0 ? 1 + (n % 37) : SampleBlock.Capacity;
                Repeat(n % Shapes, sets, n % 4 == 3 ? 0u : 20000u, (uint)(100 + n));
            }
        }

        private void Repeat(int shape, int sets, uint interval, uint seed)
        {
            block.Begin(interval);
            Noise same = new Noise(seed);
            level = 4000;
            for (int i = 0; i < sets; i++)
            {
                Fill(shape, i, interval, same);
                Expect(block.TryAdd(given), "a set was refused");
            }

            Expect((interval == 0 && sets < SampleBlock.Capacity) || !block.TryAdd(given), "a set that does not continue was taken");
            int length = writer.Write(block, 1, 1, seed);
            Digest.Add(writer.Bytes, 0, length);
            Digest.Records++;
            RecordReader reader = new RecordReader(writer.Bytes);
            Envelope envelope = new Envelope();
            Expect(reader.TryReadEnvelope(0, length, envelope) == EnvelopeResult.Complete && reader.TryReadBody(envelope, read), "the block could not be read");
            ExpectNumber(sets, read.Count, "sets");
            same = new Noise(seed);
            level = 4000;
            for (int i = 0; i < read.Count; i++)
            {
                Fill(shape, i, interval, same);
                read.CopyTo(i, back);
                Expect(back.Microseconds == given.Microseconds, "another time came back");
                for (int channel = 0; channel < Channel.Count; channel++)
                {
                    Expect(back.Values[channel] == given.Values[channel], "another value came back");
                }
            }

            ReadDamaged(length);
        }

        private void Fill(int shape, int index, uint interval, Noise same)
        {
            given.Microseconds = 1000000 + (index * (interval == 0 ? 21000L : interval)) + (interval == 0 ? index * index : 0);
            level += same.Bell(2);
            for (int channel = 0; channel < Channel.Count; channel++)
            {
                given.Values[channel] = Value((shape + channel) % Shapes, index, same);
            }

            // A speed is never negative.
            given.Values[Channel.Speed] = given.Values[Channel.Speed] < 0 ? SampleSet.Missing : given.Values[Channel.Speed];
        }

        private int Value(int shape, int index, Noise same)
        {
            switch (shape)
            {
                case 0:
                    return 7000;
                case 1:
                    return 9000 + same.Bell(2);
                case 2:
                    return level;
                case 3:
                    return (index * 220) - 12000 + same.Bell(1);
                case 4:
                    return same.Next() - 32767 + (same.Next() & 1 & (index >> 9));
                case 5:
                    return (index & 3) == 0 ? SampleSet.Missing : 500 + same.Bell(4);
                case 6:
                    return index < 64 ? 3200 : 14000 + same.Bell(20);
                default:
                    return SampleSet.Missing;
            }
        }

        // Whatever the bits are, reading ends and stays inside.
        private void ReadDamaged(int length)
        {
            int at = RecordFormat.HeaderLength + (noise.Next() % (length - RecordFormat.EnvelopeLength));
            writer.Bytes[at] ^= 0x21;
            ByteReader reader = new ByteReader(writer.Bytes);
            reader.Restart(RecordFormat.HeaderLength, length - RecordFormat.EnvelopeLength);
            Digest.AddNumber(read.TryRead(reader) ? read.Count : -1);
        }
    }
}
