using System;
using System.Diagnostics;
using System.Threading;
using LoggerBox.Host;
using LoggerBox.Host.Calibrating;
using LoggerBox.Host.Link;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.App.Calibration;

/// <summary>Reads one loop while a pressure stands on it.</summary>
internal sealed class PointReading(LoggerConnection logger, PressureUnit unit, TimeSpan patience, CancellationToken stop)
{
    private static readonly TimeSpan Interval = TimeSpan.FromMilliseconds(100);

    // A transducer of the named range reads nearer than this; what is further away is another pressure, still on its way.
    private const double NearEnough = 0.07;

    /// <summary>Waits until the loop reads about so much and stands still.</summary>
    /// <param name="range">Pascal from 4 to 20 mA.</param>
    /// <exception cref="UserErrorException">It never did, the engine turns, or the logger tells no current.</exception>
    public CalibrationPoint Read(int channel, double pascal, double range)
    {
        var steady = new SteadyCounts();
        var clock = Stopwatch.StartNew();
        bool found = false;
        string refusal = "";
        using var enough = CancellationTokenSource.CreateLinkedTokenSource(stop);
        Watch(
            live =>
            {
                refusal = RefusalOf(live);
                steady.Add(live.Microseconds, channel switch { Channel.Main => live.Main, Channel.Clutch => live.Clutch, _ => live.Converter });
                found = refusal.Length == 0 && steady.State == LoopReading.Steady && IsNear(steady.Mean, pascal, range);
                if (found || refusal.Length > 0 || clock.Elapsed > patience)
                {
                    enough.Cancel();
                }
            },
            enough.Token);
        stop.ThrowIfCancellationRequested();
        return refusal.Length > 0 ? throw new UserErrorException(refusal)
            : found
            ? new CalibrationPoint(pascal, steady.Mean)
            : throw new UserErrorException(CalibrateMessages.NeverStood(
                ChannelNames.Of(channel), CalibrateMessages.Of(unit, pascal), steady.State, CalibrateMessages.Of(unit, Nominal(steady.Mean, range)), patience.TotalSeconds));
    }

    private void Watch(Action<LiveReadings> show, CancellationToken until)
    {
        try
        {
            logger.Watch(Interval, show, until);
        }
        catch (UserErrorException error)
        {
            throw new UserErrorException(CalibrateMessages.Cut(error.Message));
        }
    }

    private string RefusalOf(LiveReadings live) => !live.Sampling ? CalibrateMessages.NotSampling(logger.Port)
        : live.Speed is not SampleSet.Missing and > 0 ? CalibrateMessages.EngineTurns(live.Speed / 10.0)
        : "";

    private static bool IsNear(double counts, double pascal, double range) => Math.Abs(Nominal(counts, range) - pascal) <= NearEnough * range;

    // As a transducer without any error of its own would have it.
    private static double Nominal(double counts, double range) => (counts - (4 * 800)) / ChannelFit.LoopCounts * range;
}
