using System;
using System.IO;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace LoggerBox.Shop.Tests.Gate;

/// <summary>A request as bytes, as no well-behaved browser sends it.</summary>
internal static class HostileRequest
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    /// <returns>The status, or 0 where the line was closed without one; and all that came.</returns>
    public static (int Status, string Answer) Send(Uri address, string request)
    {
        using var client = new TcpClient();
        client.Connect(IPAddress.Loopback, address.Port);
        using NetworkStream stream = client.GetStream();
        stream.ReadTimeout = stream.WriteTimeout = (int)Patience.TotalMilliseconds;
        byte[] bytes = Encoding.Latin1.GetBytes(request);
        var answer = new MemoryStream();
        try
        {
            stream.Write(bytes);
            stream.CopyTo(answer);
        }
        catch (IOException)
        {
            // Closed in the middle of what was too much: that is a refusal, too.
        }

        string text = Encoding.UTF8.GetString(answer.ToArray());
        return (text.StartsWith("HTTP/1.1 ", StringComparison.Ordinal) ? int.Parse(text[9..12]) : 0, text);
    }
}
