using System;
using System.Threading;
using LoggerBox.App.Console;
using LoggerBox.Host;
using LoggerBox.Host.Link;
using LoggerBox.Host.Live;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Link;

namespace LoggerBox.App.Watching;

/// <summary>The logger's readings until nobody looks any more, over a line that may be cut and come back.</summary>
internal sealed class LiveLine : IDisposable
{
    private static readonly TimeSpan Interval = TimeSpan.FromMilliseconds(200);

    private readonly PressureUnit unit;
    private readonly LiveLimits? limits;
    private readonly LiveNames names = new();
    private HostLine line;

    private LiveLine(HostLine line, PressureUnit unit, LiveLimits? limits)
    {
        this.line = line;
        this.unit = unit;
        this.limits = limits;
    }

    /// <summary>Opens the port and greets who is there.</summary>
    /// <exception cref="UserErrorException">There is no such port, or no logger at it.</exception>
    public static LiveLine Open(string port, PressureUnit unit, LiveLimits? limits)
    {
        var live = new LiveLine(HostLine.Open(port), unit, limits);
        try
        {
            new LoggerConnection(live.line).Hello();
            return live;
        }
        catch
        {
            live.Dispose();
            throw;
        }
    }

    /// <exception cref="UserErrorException">The line or the logger failed, or did not come back.</exception>
    /// <exception cref="OperationCanceledException">Told to stop while the line was looked for.</exception>
    public void Run(IWatchDisplay display, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            try
            {
                var logger = new LoggerConnection(line);
                var scale = new LiveScale(logger.PressureCalibrations(), unit, limits);
                logger.Watch(Interval, readings => display.Show(Shown(scale, readings)), stop);
            }
            catch (UserErrorException cut) when (line.WasCut)
            {
                display.Tell(Messages.LineCut(line.Port, null, LostLine.Patience.TotalSeconds));
                line.Dispose();
                (line, _) = LostLine.FindAgain(line.Port, cut, stop);
            }
        }
    }

    private LiveMoment Shown(LiveScale scale, LiveReadings readings)
    {
        names.Take(readings);
        return scale.Of(readings, names);
    }

    public void Dispose() => line.Dispose();
}
