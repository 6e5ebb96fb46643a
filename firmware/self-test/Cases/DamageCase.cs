using LoggerBox.Protocol.Records;

namespace LoggerBox.SelfTest.Cases
{
    /// <summary>Records that were cut, changed or follow rubbish: a sound one is found, a wrong one never.</summary>
    internal sealed class DamageCase : SelfTestCase
    {
        private const int RecordCount = 12;

        private readonly byte[] bytes = new byte[1024];
        private readonly RecordWriter writer = new RecordWriter();
        private readonly EventRecord record = new EventRecord();
        private readonly Noise noise = new Noise(13);
        private int length;

        public DamageCase()
            : base("damage")
        {
        }

        public override void Execute()
        {
            for (int n = 0; n < RecordCount; n++)
            {
                record.Microseconds = n * 1000003L;
                record.Kind = EventKind.Button;
                record.Value = -n;
                int count = writer.Write(record, 1, 1, (uint)n);
                System.Array.Copy(writer.Bytes, 0, bytes, length, count);
                length += count;
            }

            ExpectNumber(RecordCount, Count(length), "whole records");
            for (int cut = 0; cut < length; cut += 17)
            {
                ExpectNumber(cut * RecordCount / length, Count(cut), "records before the cut");
            }

            for (int n = 0; n < 60; n++)
            {
                int at = noise.Next() % length;
                byte before = bytes[at];
                bytes[at] ^= (byte)(1 << (n % 8));
                ExpectNumber(RecordCount - 1, Count(length), "records beside the changed one");
                bytes[at] = before;
            }
        }

        private int Count(int end)
        {
            RecordScan scan = new RecordScan(bytes, 0, end);
            int found = 0;
            while (scan.MoveNext())
            {
                Expect(scan.TryReadBody(record) && record.Value == -(int)scan.Envelope.Sequence, "a wrong record was given out");
                found++;
            }

            Digest.AddNumber(scan.DamagedBytes);
            Digest.AddNumber(scan.UnfinishedBytes);
            return found;
        }
    }
}
