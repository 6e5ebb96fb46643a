using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using System.Threading;
using LoggerBox.App.Console;
using LoggerBox.Host;
using LoggerBox.Host.Archive;
using LoggerBox.Host.Calibrating;
using LoggerBox.Host.Link;
using LoggerBox.Host.Report;
using LoggerBox.Host.Units;
using LoggerBox.Protocol.Link;
using LoggerBox.Protocol.Records;

namespace LoggerBox.App.Calibration;

/// <summary>One channel after the other, each pressure from below; then all of them stored, or none.</summary>
internal sealed class CalibrationRun
{
    // A fifth and nine tenths of the range.
    private static readonly double[] UsualShares = [0, 0.2, 0.9];

    private readonly Terminal terminal;
    private readonly CalibrationOrder order;
    private readonly LoggerConnection logger;
    private readonly CancellationToken stop;
    private readonly CalibrationStoring storing;
    private readonly Questions questions;

    public CalibrationRun(Terminal terminal, CalibrationOrder order, LoggerConnection logger, CancellationToken stop)
    {
        this.terminal = terminal;
        this.order = order;
        this.logger = logger;
        this.stop = stop;
        storing = new CalibrationStoring(logger, order.Channels);
        questions = new Questions(terminal, stop);
    }

    /// <exception cref="UserErrorException">What was read makes no calibration, or it could not be stored; the sentence says what the logger holds.</exception>
    public void Run(ArchiveFile archive, uint loggerId, DateTimeOffset now)
    {
        List<ChannelPlan> plans = [.. order.Channels.Select(PlanOf)];
        terminal.Out.WriteLine(CalibrateMessages.Caution);
        List<ArchivedCalibration> found = [.. plans.Select(plan => Calibrate(plan, loggerId, now))];
        if (order.Asks && !questions.Yes(CalibrateMessages.Store))
        {
            throw new UserErrorException(CalibrateMessages.Left);
        }

        storing.Store([.. found.Select(ToSend)]);
        try
        {
            archive.Calibrations.Add(found);
        }
        catch (UserErrorException error)
        {
            throw new UserErrorException(CalibrateMessages.NotArchived(error.Message));
        }

        terminal.Out.WriteLine(CalibrateMessages.Stored(order.Channels.Select(ChannelNames.Of), order.Due.ToString("yyyy-MM-dd")));
    }

    /// <summary>Refused before anybody sets a pressure.</summary>
    private ChannelPlan PlanOf(int channel)
    {
        string name = ChannelNames.Of(channel);
        CalibrationAnswer held = storing.Before(channel);
        double range = order.Ranges.TryGetValue(channel, out var given) ? (given.High - given.Low) * given.Unit.InPascal()
            : held is { Kind: ChannelKind.CurrentLoop, SpanPascal: > 0, SpanCounts: > 0 } ? (double)held.SpanPascal / held.SpanCounts * ChannelFit.LoopCounts
            : throw new UserErrorException(CalibrateMessages.NoRange(name));
        double[] pascal = order.Pascal.Count > 0 ? [.. order.Pascal] : [.. UsualShares.Select(share => share * range)];
        if (ChannelFit.WhyNot(pascal, range) is string why)
        {
            throw new UserErrorException(CalibrateMessages.BadPressures(name, why, CalibrateMessages.Of(order.Unit, range)));
        }

        double most = order.ClassPercent is double percent ? percent / 100 * range : held.AccuracyPascal;
        string transducer = order.Transducers.GetValueOrDefault(channel, held.Transducer);
        Demand(transducer, "the transducer's type and number");
        Demand(order.ReferenceOnTheLogger, "reference and certificate");
        return new ChannelPlan(channel, range, pascal, most, transducer);
    }

    private ArchivedCalibration Calibrate(ChannelPlan plan, uint loggerId, DateTimeOffset now)
    {
        string name = ChannelNames.Of(plan.Channel);
        List<CalibrationPoint> points = [];
        foreach (double pascal in plan.Pascal)
        {
            points.Add(Point(plan, name, pascal));
            terminal.Out.WriteLine(CalibrateMessages.Read(name, Text(pascal), points[^1].Counts));
        }

        ChannelFit fit = ChannelFit.TryOf(points, plan.Range, out string why) ?? throw new UserErrorException(CalibrateMessages.NoFit(name, why));
        Show(plan, points, fit);
        if (plan.MostPascal > 0 && fit.LargestResidual > plan.MostPascal)
        {
            throw new UserErrorException(CalibrateMessages.OutOfClass(name, Text(fit.LargestResidual), Text(plan.MostPascal)));
        }

        return new ArchivedCalibration(
            loggerId, plan.Channel, fit.ZeroCounts, fit.SpanCounts, fit.SpanPascal, (int)Math.Round(plan.MostPascal), plan.Transducer, order.Reference, order.Certificate,
            order.Certified, order.ReferenceDue, order.Due, order.By,
            ArchivedCalibration.PointsOf(points.Select(point => ((int)Math.Round(point.Counts * 100), (int)Math.Round(point.Pascal)))), now);
    }

    private CalibrationPoint Point(ChannelPlan plan, string name, double pascal)
    {
        if (order.Asks)
        {
            questions.Enter(pascal == 0 ? CalibrateMessages.PressEnterAtZero(name) : CalibrateMessages.PressEnter(name, Text(pascal)));
        }
        else
        {
            terminal.Out.WriteLine(pascal == 0 ? CalibrateMessages.ZeroStep(name) : CalibrateMessages.Step(name, Text(pascal)));
        }

        return new PointReading(logger, order.Unit, order.Patience, stop).Read(plan.Channel, pascal, plan.Range);
    }

    private void Show(ChannelPlan plan, List<CalibrationPoint> points, ChannelFit fit)
    {
        CalibrationAnswer held = storing.Before(plan.Channel);
        var table = new TextTable("lrrr");
        table.Add("", "reference", "residual now", "residual before");
        for (int i = 0; i < points.Count; i++)
        {
            double before = held.Kind == ChannelKind.CurrentLoop ? (points[i].Counts - held.ZeroCounts) * held.SpanPascal / held.SpanCounts - points[i].Pascal : double.NaN;
            table.Add("", Text(points[i].Pascal), Fine(fit.Residuals[i]), double.IsNaN(before) ? "-" : Fine(before));
        }

        table.WriteTo(terminal.Out);
        terminal.Out.WriteLine(plan.MostPascal > 0
            ? $"  at worst {Text(fit.LargestResidual)}; the transducer's class allows {Text(plan.MostPascal)}"
            : $"  at worst {Text(fit.LargestResidual)}; the transducer's class is not known (--class)");
    }

    private SendCalibration ToSend(ArchivedCalibration one) => new()
    {
        Channel = (byte)one.Channel,
        Kind = ChannelKind.CurrentLoop,
        ZeroCounts = one.ZeroCounts,
        SpanCounts = one.SpanCounts,
        SpanPascal = one.SpanPascal,
        AccuracyPascal = one.AccuracyPascal,
        UtcSeconds = (uint)one.Made.ToUnixTimeSeconds(),
        Transducer = one.Transducer,
        Reference = order.ReferenceOnTheLogger,
    };

    private static void Demand(string text, string what)
    {
        if (Encoding.UTF8.GetByteCount(text) > RecordFormat.TextWidth)
        {
            throw new UserErrorException(CalibrateMessages.TooLong(what, RecordFormat.TextWidth));
        }
    }

    private string Text(double pascal) => CalibrateMessages.Of(order.Unit, pascal);

    // A residual is smaller than what a gauge shows.
    private string Fine(double pascal) =>
        FormattableString.Invariant($"{pascal / order.Unit.InPascal():+0.000;-0.000;0.000} {order.Unit.Printed()}");

    /// <param name="Range">Pascal from 4 to 20 mA.</param>
    /// <param name="MostPascal">What the transducer's class allows; 0: not known.</param>
    private sealed record ChannelPlan(int Channel, double Range, IReadOnlyList<double> Pascal, double MostPascal, string Transducer);
}
