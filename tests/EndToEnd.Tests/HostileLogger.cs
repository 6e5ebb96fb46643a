using System;
using System.Net;
using System.Net.Sockets;
using System.Threading;
using LoggerBox.Protocol.Framing;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.EndToEnd.Tests;

/// <summary>A device that speaks the protocol and means no good: its list and its bytes are what the test says.</summary>
internal sealed class HostileLogger : IDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly FrameEncoder encoder = new();
    private readonly Action<SessionList> list;
    private readonly Action<HostileLogger, Fetch> send;
    private readonly Thread thread;
    private Socket? visitor;

    public HostileLogger(Action<SessionList> list, Action<HostileLogger, Fetch> send)
    {
        this.list = list;
        this.send = send;
        listener.Start();
        thread = new Thread(Serve);
        thread.Start();
    }

    public string Port => $"tcp:{listener.LocalEndpoint}";

    public void Say(IMessage message) => visitor!.Send(encoder.Frame, encoder.Encode(message), SocketFlags.None);

    public void Dispose()
    {
        listener.Stop();
        visitor?.Dispose();
        thread.Join();
    }

    private void Serve()
    {
        try
        {
            while (true)
            {
                visitor = listener.AcceptSocket();
                Listen();
            }
        }
        catch (Exception error) when (error is SocketException or ObjectDisposedException)
        {
            // The test is over.
        }
    }

    private void Listen()
    {
        FrameDecoder decoder = new();
        byte[] buffer = new byte[4096];
        try
        {
            for (int got = visitor!.Receive(buffer); got > 0; got = visitor.Receive(buffer))
            {
                for (int i = 0; i < got; i++)
                {
                    if (decoder.Accept(buffer[i]))
                    {
                        Answer(decoder.Content);
                    }
                }
            }
        }
        catch (SocketException)
        {
            // The program has gone.
        }
    }

    private void Answer(ByteReader content)
    {
        switch ((MessageCode)content.ReadByte())
        {
            case MessageCode.Hello:
                Say(new HelloAnswer { Version = LinkVersion.Current, RecordVersion = RecordFormat.Version, CapacityBytes = long.MaxValue, FreeBytes = long.MinValue });
                break;
            case MessageCode.List:
                List asked = new();
                asked.TryRead(content);
                SessionList page = new() { FirstIndex = asked.FirstIndex };
                list(page);
                Say(page);
                break;
            case MessageCode.Fetch:
                Fetch fetch = new();
                fetch.TryRead(content);
                send(this, fetch);
                break;
            case MessageCode.SetClock:
                Say(new ClockAnswer());
                break;
            case MessageCode.Confirm:
                Confirm confirm = new();
                confirm.TryRead(content);
                Say(new Confirmed { SessionNumber = confirm.SessionNumber });
                break;
        }
    }
}
