using System;
using System.Runtime.InteropServices;
using LoggerBox.Capture.Link;

namespace LoggerBox.Benchmarks.Line;

/// <summary>The logger's plug in a pseudo-terminal. Neither call waits, as on the logger.</summary>
internal sealed class TerminalFile : ISerialPort, IDisposable
{
    private const int ReadWriteNoControlNonBlocking = 2 | 0x100 | 0x800;

    private readonly int file;

    public TerminalFile(string path)
    {
        file = open(path, ReadWriteNoControlNonBlocking);
        if (file < 0)
        {
            throw new InvalidOperationException($"{path} cannot be opened: {Marshal.GetLastPInvokeErrorMessage()}");
        }
    }

    public int Read(byte[] buffer, int offset, int count) => (int)Math.Max(0, read(file, ref buffer[offset], (nuint)count));

    public int Write(byte[] buffer, int offset, int count) => (int)Math.Max(0, write(file, ref buffer[offset], (nuint)count));

    public void Dispose() => _ = close(file);

    [DllImport("libc")]
    internal static extern int usleep(uint microseconds);

    [DllImport("libc", SetLastError = true, CharSet = CharSet.Ansi, BestFitMapping = false, ThrowOnUnmappableChar = true)]
    private static extern int open(string path, int flags);

    [DllImport("libc")]
    private static extern nint read(int file, ref byte buffer, nuint length);

    [DllImport("libc")]
    private static extern nint write(int file, ref byte buffer, nuint length);

    [DllImport("libc")]
    private static extern int close(int file);
}
