using System;
using LoggerBox.Capture.Link;
using LoggerBox.Host.Link;

namespace LoggerBox.App.Simulation;

/// <summary>The virtual logger's plug: what the capture side calls a serial port, on a line that this program made.</summary>
internal sealed class LinePort(IDeviceLine line) : ISerialPort
{
    private readonly byte[] waiting = new byte[256];
    private int first;
    private int end;

    public int Read(byte[] buffer, int offset, int count)
    {
        if (first == end)
        {
            return line.Read(buffer, offset, count, 0);
        }

        int taken = Math.Min(count, end - first);
        Array.Copy(waiting, first, buffer, offset, taken);
        first += taken;
        return taken;
    }

    public int Write(byte[] buffer, int offset, int count) => line.Write(buffer, offset, count);

    /// <summary>Sleeps until bytes come or the time is over; a logger without visitors takes no processor time.</summary>
    public void Wait(int milliseconds)
    {
        if (first == end)
        {
            first = 0;
            end = line.Read(waiting, 0, waiting.Length, milliseconds);
        }
    }
}
