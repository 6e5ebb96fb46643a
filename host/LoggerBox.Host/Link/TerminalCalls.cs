using System;
using System.Runtime.InteropServices;

namespace LoggerBox.Host.Link;

/// <summary>One entry of poll(2).</summary>
[StructLayout(LayoutKind.Sequential)]
internal struct PollEntry
{
    public int Descriptor;
    public short Wanted;
    public short Returned;
}

/// <summary>The C library's calls for pseudo-terminals, under their own names; numbers from the headers of Linux and macOS.</summary>
internal static class TerminalCalls
{
    public const int OpenForReadingAndWriting = 2;
    public const int SetNow = 0;
    public const short PollIn = 1;
    public const short PollOut = 4;
    public const short PollHangUp = 16;

    public static int NotTheControllingTerminal => OperatingSystem.IsMacOS() ? 0x20000 : 0x100;

    /// <summary>macOS refuses the flag here: a write there waits for a slow reader.</summary>
    public static int NonBlocking => OperatingSystem.IsMacOS() ? 0 : 0x800;

    [DllImport("libc", SetLastError = true)]
    public static extern int posix_openpt(int flags);

    [DllImport("libc", SetLastError = true)]
    public static extern int grantpt(int descriptor);

    [DllImport("libc", SetLastError = true)]
    public static extern int unlockpt(int descriptor);

    [DllImport("libc", SetLastError = true)]
    public static extern int ptsname_r(int descriptor, byte[] name, nuint length);

    [DllImport("libc", SetLastError = true)]
    public static extern int tcgetattr(int descriptor, byte[] settings);

    [DllImport("libc", SetLastError = true)]
    public static extern int tcsetattr(int descriptor, int when, byte[] settings);

    [DllImport("libc")]
    public static extern void cfmakeraw(byte[] settings);

    [DllImport("libc", SetLastError = true)]
    public static extern int poll(ref PollEntry entries, uint count, int milliseconds);

    [DllImport("libc", SetLastError = true)]
    public static extern nint read(int descriptor, ref byte buffer, nuint count);

    [DllImport("libc", SetLastError = true)]
    public static extern nint write(int descriptor, ref byte buffer, nuint count);

    [DllImport("libc", SetLastError = true)]
    public static extern int close(int descriptor);
}
