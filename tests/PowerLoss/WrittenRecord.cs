using LoggerBox.Protocol.Records;

namespace LoggerBox.PowerLoss;

/// <summary>
/// A record whose body is written beforehand, once: workers of a campaign share it, and a block of samples changes while it is written.
/// </summary>
public sealed class WrittenRecord : IRecord
{
    private readonly byte[] body;

    public WrittenRecord(IRecord record)
    {
        RecordWriter writer = new();
        int length = writer.Write(record, 0, 0, 0);
        body = writer.Bytes[RecordFormat.HeaderLength..(length - RecordFormat.CrcLength)];
        Code = record.Code;
    }

    public RecordCode Code { get; }

    public void Write(ByteWriter writer)
    {
        foreach (byte one in body)
        {
            writer.WriteByte(one);
        }
    }

    public bool TryRead(ByteReader reader) => false;
}
