using System;

namespace LoggerBox.Host.Link;

/// <summary>
/// The logger's end of a line that this program makes itself, for the virtual logger. The other end comes and goes; this one stays.
/// </summary>
public interface IDeviceLine : IDisposable
{
    /// <summary>What the other side opens: a device's path, or tcp:127.0.0.1:N.</summary>
    string PortName { get; }

    /// <summary>Reads what has come, waiting at most so long for the first byte. 0: nothing came, or nobody is there.</summary>
    int Read(byte[] buffer, int offset, int count, int milliseconds);

    /// <summary>
    /// Writes what the line takes within a few milliseconds and returns how much that was. With nobody at the other end the bytes are gone, as on a real wire.
    /// </summary>
    int Write(byte[] buffer, int offset, int count);
}
