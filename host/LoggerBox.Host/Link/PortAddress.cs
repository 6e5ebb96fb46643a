using System;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace LoggerBox.Host.Link;

/// <summary>How a port is written: a serial device's name, or tcp:127.0.0.1:N.</summary>
public static class PortAddress
{
    public const string TcpPrefix = "tcp:";

    public static bool IsTcp(string port) => port.StartsWith(TcpPrefix, StringComparison.Ordinal);

    /// <exception cref="UserErrorException">It is no address and number, or not this computer's own.</exception>
    public static IPEndPoint Tcp(string port)
    {
        if (!IPEndPoint.TryParse(port.AsSpan(TcpPrefix.Length), out IPEndPoint? end)
            || end.AddressFamily != AddressFamily.InterNetwork
            || !port.EndsWith(":" + end.Port.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal)
            || end.Port == 0)
        {
            throw new UserErrorException($"{port} is no TCP port: write it as tcp:127.0.0.1:N with a number from 1 to 65535.", usage: true);
        }

        if (!IPAddress.IsLoopback(end.Address))
        {
            throw new UserErrorException($"{port} is not on this computer: a TCP port must be written tcp:127.0.0.1:N.", usage: true);
        }

        return end;
    }
}
