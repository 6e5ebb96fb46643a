using LoggerBox.Protocol.Records;

namespace LoggerBox.SelfTest.Cases
{
    /// <summary>Every kind of record, read from bodies of noise where they can be read, written, read and written again.</summary>
    internal sealed class RecordCase : SelfTestCase
    {
        private const int Bodies = 24;

        private readonly byte[] body = new byte[RecordFormat.MaxBody];
        private readonly byte[] first = new byte[RecordFormat.MaxBody];
        private readonly byte[] second = new byte[RecordFormat.MaxBody];
        private readonly RecordWriter envelope = new RecordWriter();
        private readonly Noise noise = new Noise(7);

        public RecordCase()
            : base("records")
        {
        }

        public override void Execute()
        {
            Repeat(new SessionHeader(), new SessionHeader());
            Repeat(new PlanRecord(), new PlanRecord());
            Repeat(new EventRecord(), new EventRecord());
            Repeat(new HoldRecord(), new HoldRecord());
            Repeat(new EngagementRecord(), new EngagementRecord());
            Repeat(new RunUpRecord(), new RunUpRecord());
            Repeat(new DropoutRecord(), new DropoutRecord());
            Repeat(new SessionEnd(), new SessionEnd());
            Repeat(new SessionConfirmation(), new SessionConfirmation());
            WriteTooMuch();
        }

        private void Repeat(IRecord record, IRecord other)
        {
            int read = 0;
            ByteReader reader = new ByteReader(body);
            ByteWriter writer = new ByteWriter(first);
            ByteWriter again = new ByteWriter(second);
            for (int n = 0; n < Bodies; n++)
            {
                noise.Fill(body, 400, n % 3 == 0 ? 0xFF : n % 3 == 1 ? 0x03 : 0x7F);
                reader.Restart(0, 400);
                if (!record.TryRead(reader))
                {
                    continue;
                }

                read++;
                writer.Restart(0, first.Length);
                record.Write(writer);
                ByteReader back = new ByteReader(first);
                back.Restart(0, writer.Position);
                Expect(other.TryRead(back), "what was written could not be read");
                again.Restart(0, second.Length);
                other.Write(again);
                ExpectNumber(writer.Position, again.Position, "length");
                for (int i = 0; i < writer.Position; i++)
                {
                    Expect(first[i] == second[i], "another byte was written");
                }

                int length = envelope.Write(record, 5, 2, (uint)n);
                Digest.Add(envelope.Bytes, 0, length);
                Digest.Records++;
            }

            Expect(read > 0, "no body could be read");
        }

        private void WriteTooMuch()
        {
            ByteWriter writer = new ByteWriter(first);
            writer.Restart(0, 10);
            writer.WriteInt64(1);
            writer.WriteInt32(2);
            Expect(writer.Overflowed && writer.Position == 8, "a field was written past the end");
            writer.Restart(0, 16);
            writer.WriteText("\u00D6l \u20AC\uD83D\uDE9C!", 16);
            ByteReader reader = new ByteReader(first);
            reader.Restart(0, 16);
            Digest.Add(first, 0, 16);
            Digest.AddText(reader.ReadText(16));
            Expect(reader.ReadInt64() == 0 && reader.TooShort, "a field was read past the end");
        }
    }
}
