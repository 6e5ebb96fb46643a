using System;
using System.Collections.Generic;
using System.Threading;
using System.Threading.Channels;
using System.Threading.Tasks;
using LoggerBox.Host;
using LoggerBox.Host.Link;
using LoggerBox.Host.Live;
using LoggerBox.Protocol.Records;

namespace LoggerBox.Shop.Live;

/// <summary>
/// Watches the logger for as long as anybody looks, and shows each the newest reading. The line has one owner at a time: a question to the
/// logger has the watch let go of it first.
/// </summary>
internal sealed class LiveFeed(ShopSettings settings) : IDisposable
{
    public const int MostLookers = 8;

    private static readonly TimeSpan Interval = TimeSpan.FromMilliseconds(200);
    private static readonly TimeSpan BetweenTries = TimeSpan.FromSeconds(2);

    private static readonly TimeSpan BetweenLooks = TimeSpan.FromMilliseconds(20);

    private readonly Lock gate = new();
    private readonly SemaphoreSlim line = new(1);
    private readonly List<(Channel<LiveShown> Channel, LiveLook Look)> lookers = [];
    private readonly CancellationTokenSource closing = new();
    private readonly LiveNames names = new();
    private CancellationTokenSource? watching;
    private int questions;

    public string? Port => settings.LoggerPort;

    /// <summary>Null: too many look already.</summary>
    public ChannelReader<LiveShown>? Join(LiveLook look)
    {
        lock (gate)
        {
            if (lookers.Count >= MostLookers || closing.IsCancellationRequested)
            {
                return null;
            }

            var looker = System.Threading.Channels.Channel.CreateBounded<LiveShown>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropOldest });
            lookers.Add((looker, look));
            if (lookers.Count == 1)
            {
                watching = CancellationTokenSource.CreateLinkedTokenSource(closing.Token);
                CancellationToken stop = watching.Token;
                Task.Factory.StartNew(() => Watch(stop), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
            }

            return looker.Reader;
        }
    }

    public void Leave(ChannelReader<LiveShown> reader)
    {
        lock (gate)
        {
            lookers.RemoveAll(looker => looker.Channel.Reader == reader);
            if (lookers.Count == 0)
            {
                watching?.Cancel();
                watching = null;
            }
        }
    }

    /// <summary>Asks the logger something between two readings.</summary>
    /// <exception cref="UserErrorException">There is no logger, or it does not answer.</exception>
    public T Ask<T>(Func<LoggerConnection, T> question)
    {
        string port = Port ?? throw new UserErrorException("No logger is connected to this page: start it again with `loggerbox serve --logger PORT`.");
        Interlocked.Increment(ref questions);
        try
        {
            line.Wait(closing.Token);
            try
            {
                using HostLine open = HostLine.Open(port);
                return question(new LoggerConnection(open));
            }
            finally
            {
                line.Release();
            }
        }
        finally
        {
            Interlocked.Decrement(ref questions);
        }
    }

    public void Dispose() => closing.Cancel();

    private void Watch(CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            try
            {
                WatchOnce(stop);
            }
            catch (UserErrorException error)
            {
                Show(_ => LiveShown.Trouble(error.Message));
                stop.WaitHandle.WaitOne(BetweenTries);
            }
            catch (OperationCanceledException)
            {
                return;
            }
        }
    }

    private void WatchOnce(CancellationToken stop)
    {
        if (Port is not string port)
        {
            throw new UserErrorException("No logger is connected to this page: start it again with `loggerbox serve --logger PORT`.");
        }

        line.Wait(stop);
        try
        {
            using HostLine open = HostLine.Open(port);
            var logger = new LoggerConnection(open);
            logger.Hello();
            IReadOnlyList<ChannelCalibration> calibrations = logger.PressureCalibrations();
            using var asked = CancellationTokenSource.CreateLinkedTokenSource(stop);
            logger.Watch(
                Interval,
                readings =>
                {
                    names.Take(readings);
                    Show(look => LiveShown.Of(new LiveScale(calibrations, look.Unit, look.Limits).Of(readings, names)));
                    if (Volatile.Read(ref questions) > 0)
                    {
                        asked.Cancel();
                    }
                },
                asked.Token);
        }
        finally
        {
            line.Release();
        }

        // Who asks is let in before the watch takes the line again.
        while (Volatile.Read(ref questions) > 0 && !stop.WaitHandle.WaitOne(BetweenLooks))
        {
        }
    }

    private void Show(Func<LiveLook, LiveShown> shown)
    {
        lock (gate)
        {
            lookers.ForEach(looker => looker.Channel.Writer.TryWrite(shown(looker.Look)));
        }
    }
}
