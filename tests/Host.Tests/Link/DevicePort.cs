using LoggerBox.Capture.Link;
using LoggerBox.Host.Link;

namespace LoggerBox.Host.Tests.Link;

/// <summary>The logger's end of a line as the logger's own code wants it; waits a moment when there was nothing to do.</summary>
internal sealed class DevicePort : ISerialPort
{
    private readonly IDeviceLine line;

    public DevicePort(IDeviceLine line) => this.line = line;

    public int MillisecondsToWait { get; set; }

    /// <summary>The line goes dead after so many bytes: what is written then never arrives.</summary>
    public long BytesUntilCut { get; set; } = long.MaxValue;

    /// <summary>Flips a bit of every so many bytes; 0: a clean line.</summary>
    public int BytesBetweenErrors { get; set; }

    public long BytesWritten { get; private set; }

    public int Read(byte[] buffer, int offset, int count) => line.Read(buffer, offset, count, MillisecondsToWait);

    public int Write(byte[] buffer, int offset, int count)
    {
        if (BytesWritten >= BytesUntilCut)
        {
            return count;
        }

        byte[] sent = buffer[offset..(offset + count)];
        for (int i = 0; BytesBetweenErrors > 0 && i < count; i++)
        {
            sent[i] ^= (byte)((BytesWritten + i) % BytesBetweenErrors == BytesBetweenErrors - 1 ? 0x20 : 0);
        }

        int taken = line.Write(sent, 0, (int)long.Min(count, BytesUntilCut - BytesWritten));
        BytesWritten += taken;
        return taken;
    }
}
