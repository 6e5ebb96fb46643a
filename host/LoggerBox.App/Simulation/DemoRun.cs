using System;
using System.Threading;
using System.Threading.Tasks;
using LoggerBox.Capture.Storage;
using LoggerBox.Host.Link;
using LoggerBox.TruckSimulator.Faults;

namespace LoggerBox.App.Simulation;

/// <summary>A recorded run with its logger answering on a line of this very process, as another process would.</summary>
internal sealed class DemoRun : IDisposable
{
    private const int CardBytes = 8 << 20;

    private readonly IDeviceLine line;
    private readonly CancellationTokenSource stop;
    private readonly Task service;

    private DemoRun(VirtualLogger logger, IDeviceLine line, CancellationToken stop)
    {
        this.line = line;
        this.stop = CancellationTokenSource.CreateLinkedTokenSource(stop);
        VirtualSeconds = logger.NowMicroseconds / 1e6;
        AltitudeMetres = logger.AltitudeMetres;
        service = Task.Factory.StartNew(
            () => new LoggerService(logger, line).Answer(this.stop.Token), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
    }

    public string PortName => line.PortName;

    public double VirtualSeconds { get; }

    public double? AltitudeMetres { get; }

    public static DemoRun Record(SimulatedCause cause, int seed, CancellationToken stop)
    {
        var logger = new VirtualLogger(cause, seed, new MemoryStore(CardBytes), VirtualSettings.Beside(null));
        while (!logger.Finished)
        {
            stop.ThrowIfCancellationRequested();
            logger.Advance();
        }

        return new DemoRun(logger, PseudoTerminal.IsSupported ? PseudoTerminal.Open() : LoopbackListener.Open(), stop);
    }

    public void Dispose()
    {
        stop.Cancel();
        try
        {
            service.GetAwaiter().GetResult();
        }
        finally
        {
            line.Dispose();
            stop.Dispose();
        }
    }
}
