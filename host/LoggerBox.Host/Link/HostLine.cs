using System;
using System.IO;
using System.IO.Ports;
using System.Net.Sockets;
using System.Threading.Tasks;

namespace LoggerBox.Host.Link;

/// <summary>An opened port. One thread owns it; whatever happens to the line becomes a sentence.</summary>
public sealed class HostLine : IDisposable
{
    public const int DefaultBaud = 115_200;

    // errno of Linux and macOS, as the serial library passes it on.
    private const int NotPermitted = 1;
    private const int PermissionDenied = 13;
    private const int Busy = 16;

    private static readonly TimeSpan WriteLimit = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan CloseLimit = TimeSpan.FromSeconds(1);

    private readonly Stream stream;
    private readonly IDisposable owner;

    private HostLine(string port, Stream stream, IDisposable owner)
    {
        Port = port;
        this.stream = stream;
        this.owner = owner;
        stream.WriteTimeout = (int)WriteLimit.TotalMilliseconds;
    }

    public string Port { get; }

    /// <summary>The other end has gone: the same port may come back, this line does not.</summary>
    public bool WasCut { get; private set; }

    /// <summary>A line that is open already; it must know time-outs.</summary>
    /// <param name="port">Its name in what is said to the user.</param>
    public static HostLine Over(Stream stream, string port) => new(port, stream, stream);

    /// <param name="port">A serial device, or tcp:127.0.0.1:N.</param>
    /// <param name="baud">Of a serial device.</param>
    /// <exception cref="UserErrorException">No such port, no right to it, or not a port at all.</exception>
    public static HostLine Open(string port, int baud = DefaultBaud) => PortAddress.IsTcp(port) ? OpenTcp(port) : OpenSerial(port, baud);

    /// <summary>Reads what comes, at most so long for the first byte; 0: nothing came.</summary>
    /// <exception cref="UserErrorException">The line was cut.</exception>
    public int Read(byte[] buffer, TimeSpan limit)
    {
        try
        {
            stream.ReadTimeout = Math.Max(1, (int)limit.TotalMilliseconds);
            int got = stream.Read(buffer, 0, buffer.Length);
            return got > 0 ? got : throw Cut();
        }
        catch (TimeoutException)
        {
            return 0;
        }
        catch (IOException error) when (error.InnerException is SocketException { SocketErrorCode: SocketError.TimedOut or SocketError.WouldBlock })
        {
            return 0;
        }
        catch (Exception error) when (IsCut(error))
        {
            throw Cut();
        }
    }

    /// <exception cref="UserErrorException">The line was cut, or takes nothing.</exception>
    public void Write(byte[] buffer, int count)
    {
        try
        {
            stream.Write(buffer, 0, count);
        }
        catch (TimeoutException)
        {
            // The serial library can miss that a device went, and wait for it to take more: then its name is gone, too.
            throw HasGone(Port) ? Cut() : TakesNothing();
        }
        catch (Exception error) when (IsCut(error))
        {
            throw Cut();
        }
    }

    public void Dispose()
    {
        // The serial library waits without end for what a device that has gone took no more of, noticed or not: on a thread of its own.
        Task.Run(Close).Wait(CloseLimit);
    }

    private void Close()
    {
        try
        {
            owner.Dispose();
        }
        catch (Exception error) when (IsCut(error))
        {
            // The device went before its port was closed; there is nothing left to close.
        }
    }

    private UserErrorException Cut()
    {
        WasCut = true;
        return LinkErrors.Cut(Port);
    }

    private UserErrorException TakesNothing()
    {
        WasCut = true;
        return LinkErrors.TakesNothing(Port, WriteLimit);
    }

    /// <summary>Where devices are files. Elsewhere a name that goes is noticed by the next call.</summary>
    private static bool HasGone(string port) => !OperatingSystem.IsWindows() && !PortAddress.IsTcp(port) && !File.Exists(port);

    private static bool IsCut(Exception error) =>
        error is IOException or UnauthorizedAccessException or InvalidOperationException or OperationCanceledException;

    private static HostLine OpenSerial(string port, int baud)
    {
        SerialPort serial = new();
        try
        {
            serial.PortName = port;
            serial.BaudRate = baud;
            serial.Open();
            return new HostLine(port, serial.BaseStream, serial);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or InvalidOperationException)
        {
            serial.Dispose();
            throw OpeningFailed(port, error);
        }
    }

    private static UserErrorException OpeningFailed(string port, Exception error)
    {
        if (error is FileNotFoundException or DirectoryNotFoundException || HasGone(port))
        {
            return LinkErrors.NoSuchPort(port);
        }

        // Outside Windows the library calls every failure "access denied"; the system's own reason is inside.
        string reason = error.InnerException?.Message ?? error.Message;
        return error is UnauthorizedAccessException && error.InnerException?.HResult is null or NotPermitted or PermissionDenied or Busy
            ? LinkErrors.MayNotOpen(port)
            : LinkErrors.NotAPort(port, reason);
    }

    private static HostLine OpenTcp(string port)
    {
        Socket socket = new(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            socket.Connect(PortAddress.Tcp(port));
            return new HostLine(port, new NetworkStream(socket), socket);
        }
        catch (SocketException error)
        {
            socket.Dispose();
            throw LinkErrors.NobodyListens(port, error.Message);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }
}
