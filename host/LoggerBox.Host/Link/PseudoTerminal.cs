using System;
using System.Runtime.InteropServices;
using System.Text;
using System.Threading;

namespace LoggerBox.Host.Link;

/// <summary>
/// The master side of a pseudo-terminal (Linux, macOS): a real serial device for whoever opens the other side.
/// While nobody has that open, the system answers EIO; here that is "nothing came".
/// </summary>
public sealed class PseudoTerminal : IDeviceLine
{
    // A hang-up is reported by poll at once and again: without a pause, waiting for the next visitor would take a whole core.
    private const int MillisecondsBetweenLooksAtAHungUpLine = 5;

    // A reader that is slower than the writer: a short wait instead of a busy loop around Write.
    private const int MillisecondsForAFullLine = 5;

    private readonly int master;
    private bool disposed;

    private PseudoTerminal(int master, string portName)
    {
        this.master = master;
        PortName = portName;
    }

    public static bool IsSupported => OperatingSystem.IsLinux() || OperatingSystem.IsMacOS();

    public string PortName { get; }

    /// <exception cref="UserErrorException">The system has no pseudo-terminal to give.</exception>
    public static PseudoTerminal Open()
    {
        if (!IsSupported)
        {
            throw new UserErrorException("This system has no pseudo-terminals: use a TCP port instead (--tcp).");
        }

        int master = TerminalCalls.posix_openpt(TerminalCalls.OpenForReadingAndWriting | TerminalCalls.NotTheControllingTerminal | TerminalCalls.NonBlocking);
        byte[] name = new byte[128];
        if (master < 0
            || TerminalCalls.grantpt(master) != 0
            || TerminalCalls.unlockpt(master) != 0
            || TerminalCalls.ptsname_r(master, name, (nuint)name.Length) != 0
            || !TrySetRaw(master))
        {
            string reason = Marshal.GetPInvokeErrorMessage(Marshal.GetLastPInvokeError());
            if (master >= 0)
            {
                _ = TerminalCalls.close(master);
            }

            throw new UserErrorException($"The system gave no pseudo-terminal ({reason}): use a TCP port instead (--tcp).");
        }

        return new PseudoTerminal(master, Encoding.UTF8.GetString(name, 0, Array.IndexOf(name, (byte)0)));
    }

    public int Read(byte[] buffer, int offset, int count, int milliseconds)
    {
        long deadline = Environment.TickCount64 + milliseconds;
        while (!disposed)
        {
            int left = (int)Math.Max(0, deadline - Environment.TickCount64);
            short events = Poll(TerminalCalls.PollIn, left);
            if ((events & TerminalCalls.PollIn) != 0)
            {
                nint got = TerminalCalls.read(master, ref buffer.AsSpan(offset, count)[0], (nuint)count);
                if (got > 0)
                {
                    return (int)got;
                }
            }

            if (left == 0)
            {
                break;
            }

            if (events != 0)
            {
                Thread.Sleep(Math.Min(left, MillisecondsBetweenLooksAtAHungUpLine));
            }
        }

        return 0;
    }

    public int Write(byte[] buffer, int offset, int count)
    {
        if (count == 0 || disposed)
        {
            return 0;
        }

        short events = Poll(TerminalCalls.PollOut, MillisecondsForAFullLine);
        if ((events & TerminalCalls.PollHangUp) != 0)
        {
            return count;
        }

        if ((events & TerminalCalls.PollOut) == 0)
        {
            return 0;
        }

        nint taken = TerminalCalls.write(master, ref buffer.AsSpan(offset, count)[0], (nuint)count);
        return (int)Math.Max(0, taken);
    }

    public void Dispose()
    {
        if (!disposed)
        {
            disposed = true;
            _ = TerminalCalls.close(master);
        }
    }

    private short Poll(short wanted, int milliseconds)
    {
        PollEntry entry = new() { Descriptor = master, Wanted = wanted };
        return TerminalCalls.poll(ref entry, 1, milliseconds) > 0 ? entry.Returned : (short)0;
    }

    /// <summary>Raw: no echo and no translation of line ends; otherwise the line would change the bytes.</summary>
    private static bool TrySetRaw(int descriptor)
    {
        // Larger than struct termios of either system (60 and 72 bytes).
        byte[] settings = new byte[256];
        if (TerminalCalls.tcgetattr(descriptor, settings) != 0)
        {
            return false;
        }

        TerminalCalls.cfmakeraw(settings);
        return TerminalCalls.tcsetattr(descriptor, TerminalCalls.SetNow, settings) == 0;
    }
}
