using System;
using System.Diagnostics;
using System.Threading;
using LoggerBox.Host;
using LoggerBox.Host.Link;
using LoggerBox.Protocol.Link;

namespace LoggerBox.App.Console;

/// <summary>A plug that was pulled, a logger that starts again: the port's name is looked for again for a while.</summary>
internal static class LostLine
{
    public static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(50);

    /// <summary>Waits until a logger answers there again: a port comes back before the logger behind it has started.</summary>
    /// <exception cref="UserErrorException">It did not come back: what is wrong is the cut, not a name that was right a moment ago.</exception>
    /// <exception cref="OperationCanceledException">Nobody wants it any more.</exception>
    public static (HostLine Line, HelloAnswer Hello) FindAgain(string port, UserErrorException cut, CancellationToken stop = default)
    {
        var waiting = Stopwatch.StartNew();
        while (true)
        {
            stop.WaitHandle.WaitOne(BetweenLooks);
            stop.ThrowIfCancellationRequested();
            HostLine? line = null;
            try
            {
                line = HostLine.Open(port);
                return (line, new LoggerConnection(line).Hello());
            }
            catch (UserErrorException)
            {
                // Not back yet.
                line?.Dispose();
                if (waiting.Elapsed >= Patience)
                {
                    throw cut;
                }
            }
        }
    }
}
