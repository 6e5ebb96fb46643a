using System;
using System.Net;
using System.Net.Sockets;

namespace LoggerBox.Host.Link;

/// <summary>The logger's end as a TCP port on loopback, where there are no pseudo-terminals. One visitor at a time; the newest counts.</summary>
public sealed class LoopbackListener : IDeviceLine
{
    private readonly TcpListener listener;
    private Socket? visitor;

    private LoopbackListener(TcpListener listener) => this.listener = listener;

    public string PortName => $"{PortAddress.TcpPrefix}{listener.LocalEndpoint}";

    /// <param name="port">0: any free one.</param>
    /// <exception cref="UserErrorException">The port is taken.</exception>
    public static LoopbackListener Open(int port = 0)
    {
        TcpListener listener = new(IPAddress.Loopback, port);
        try
        {
            listener.Start();
            return new LoopbackListener(listener);
        }
        catch (SocketException error)
        {
            listener.Dispose();
            throw new UserErrorException($"TCP port {port} on 127.0.0.1 cannot be used ({error.Message}): leave the number away to get a free one.");
        }
    }

    public int Read(byte[] buffer, int offset, int count, int milliseconds)
    {
        long deadline = Environment.TickCount64 + milliseconds;
        do
        {
            int left = (int)Math.Max(0, deadline - Environment.TickCount64);
            Socket waitingFor = Visitor() ?? listener.Server;
            if (!waitingFor.Poll(TimeSpan.FromMilliseconds(Math.Min(left, 20)), SelectMode.SelectRead) || waitingFor == listener.Server)
            {
                continue;
            }

            int got = Receive(waitingFor, buffer.AsSpan(offset, count));
            if (got > 0)
            {
                return got;
            }

            Leave();
        }
        while (Environment.TickCount64 < deadline);
        return 0;
    }

    public int Write(byte[] buffer, int offset, int count)
    {
        if (Visitor() is not Socket open)
        {
            return count;
        }

        int taken = open.Send(buffer.AsSpan(offset, count), SocketFlags.None, out SocketError error);
        if (error is SocketError.Success or SocketError.WouldBlock)
        {
            return taken;
        }

        Leave();
        return count;
    }

    public void Dispose()
    {
        Leave();
        listener.Dispose();
    }

    private Socket? Visitor()
    {
        if (listener.Pending())
        {
            Leave();
            visitor = listener.AcceptSocket();
            visitor.Blocking = false;
            visitor.NoDelay = true;
        }

        return visitor;
    }

    private static int Receive(Socket open, Span<byte> buffer)
    {
        int got = open.Receive(buffer, SocketFlags.None, out SocketError error);
        return error == SocketError.Success ? got : 0;
    }

    private void Leave()
    {
        visitor?.Dispose();
        visitor = null;
    }
}
