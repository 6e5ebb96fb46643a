using System.Collections.Generic;
using System.Threading.Tasks;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Host.Sessions;

/// <summary>
/// Walks through a session's records as they lie. Sample blocks are read without any other record, and take the most time: they are tried some
/// way ahead, by all processors, or only looked at where somebody has tried them before.
/// </summary>
internal sealed class RecordWalk
{
    // Some 60,000 sample sets, 1.5 MB: whatever a made-up session promises, no more is decoded before somebody looks at it.
    private const int Ahead = 512;

    private readonly byte[] bytes;
    private readonly bool checksBlocks;
    private readonly RecordScan scan;
    private readonly RecordReader reader;
    private readonly List<Found> found = [];
    private int count;
    private int at = -1;

    public RecordWalk(byte[] bytes, bool checksBlocks)
    {
        this.bytes = bytes;
        this.checksBlocks = checksBlocks;
        scan = new RecordScan(bytes, 0, bytes.Length);
        reader = new RecordReader(bytes);
    }

    public Envelope Envelope => found[at].Envelope;

    /// <summary>Null where the record is no sample block, or one that cannot be.</summary>
    public BlockPlace? Block => found[at].Block;

    /// <summary>Bytes before this record that were no record.</summary>
    public int DamagedBytes => at < 0 ? 0 : found[at].DamagedBytes;

    /// <summary>After the last record: those that were no whole record.</summary>
    public int UnfinishedBytes => scan.UnfinishedBytes;

    public bool MoveNext()
    {
        if (at + 1 < count)
        {
            at++;
            return true;
        }

        int before = at;
        if (!Fetch())
        {
            at = before;
            return false;
        }

        at = 0;
        return true;
    }

    public bool TryReadBody(IRecord record) => reader.TryReadBody(Envelope, record);

    private bool Fetch()
    {
        int fetched = 0;
        while (fetched < Ahead && scan.MoveNext())
        {
            if (fetched == found.Count)
            {
                found.Add(new Found());
            }

            found[fetched++].Take(scan.Envelope, scan.DamagedBytes);
        }

        if (fetched == 0)
        {
            return false;
        }

        count = fetched;
        Parallel.For(0, count, () => new BlockReader(bytes, checksBlocks), (i, _, worker) => worker.Read(found[i]), _ => { });
        return true;
    }

    /// <summary>A place on the way, filled again and again.</summary>
    private sealed class Found
    {
        public Envelope Envelope { get; } = new();

        public int DamagedBytes { get; private set; }

        public BlockPlace? Block { get; set; }

        public void Take(Envelope from, int damagedBytes)
        {
            Envelope.Code = from.Code;
            Envelope.SessionNumber = from.SessionNumber;
            Envelope.BootCount = from.BootCount;
            Envelope.Sequence = from.Sequence;
            Envelope.BodyOffset = from.BodyOffset;
            Envelope.BodyLength = from.BodyLength;
            DamagedBytes = damagedBytes;
            Block = null;
        }
    }

    /// <summary>One processor's own reader and block, filled again and again.</summary>
    private sealed class BlockReader(byte[] bytes, bool checksBlocks)
    {
        private readonly RecordReader reader = new(bytes);
        private readonly ByteReader fields = new(bytes);
        private readonly SampleBlock block = new();
        private readonly BlockHead head = new();

        public BlockReader Read(Found record)
        {
            if (record.Envelope.Code == RecordCode.SampleBlock)
            {
                record.Block = !checksBlocks || reader.TryReadBody(record.Envelope, block) ? BlockPlace.Of(record.Envelope, head, fields) : null;
            }

            return this;
        }
    }
}
