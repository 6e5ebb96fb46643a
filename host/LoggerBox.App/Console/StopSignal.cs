using System;
using System.Runtime.InteropServices;
using System.Threading;

namespace LoggerBox.App.Console;

/// <summary>Ctrl-C and a polite kill ask the running verb to end: ports are closed, links removed, nothing stays half written.</summary>
internal sealed class StopSignal : IDisposable
{
    private readonly CancellationTokenSource source = new();
    private readonly PosixSignalRegistration interrupt;
    private readonly PosixSignalRegistration terminate;

    public StopSignal()
    {
        interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Ask);
        terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Ask);
    }

    public CancellationToken Token => source.Token;

    public void Dispose()
    {
        interrupt.Dispose();
        terminate.Dispose();
        source.Dispose();
    }

    private void Ask(PosixSignalContext context)
    {
        // A second Ctrl-C ends the process at once, should a verb not listen.
        if (!source.IsCancellationRequested)
        {
            context.Cancel = true;
            source.Cancel();
        }
    }
}
