using System;
using System.Collections.Generic;
using System.ComponentModel;
using System.IO.Ports;
using System.Linq;

namespace LoggerBox.Host.Link;

/// <summary>The serial ports of this computer.</summary>
public static class SerialPorts
{
    /// <summary>By name; empty where there are none.</summary>
    public static IReadOnlyList<string> List()
    {
        try
        {
            return SerialPort.GetPortNames().Distinct().Order(StringComparer.Ordinal).ToList();
        }
        catch (Exception error) when (error is Win32Exception or PlatformNotSupportedException)
        {
            throw new UserErrorException($"The system does not tell which serial ports it has ({error.Message}): name the port yourself with --port.");
        }
    }
}
