using System;
using System.IO;

namespace LoggerBox.Host;

/// <summary>A file that says how far it was read.</summary>
/// <param name="progress">Bytes read, and bytes that there are.</param>
internal sealed class WatchedFile(string path, Action<long, long>? progress) : FileStream(path, FileMode.Open, FileAccess.Read)
{
    public override int Read(byte[] buffer, int offset, int count) => Told(base.Read(buffer, offset, count));

    public override int Read(Span<byte> buffer) => Told(base.Read(buffer));

    private int Told(int read)
    {
        progress?.Invoke(Position, Length);
        return read;
    }
}
