using System;
using System.Collections.Generic;
using System.Linq;
using LoggerBox.Protocol.Link;

namespace LoggerBox.Host.Link;

/// <summary>
/// Stores calibrations on the logger: each is sent and read back, then all are asked for once more. Where one does not come through, those that
/// were there before are put back, so that no logger works by half of a calibration.
/// </summary>
public sealed class CalibrationStoring
{
    private readonly LoggerConnection logger;
    private readonly Dictionary<int, CalibrationAnswer> before = [];
    private readonly List<int> touched = [];

    /// <param name="channels">Those that will be stored; what the logger holds of them now is asked for.</param>
    public CalibrationStoring(LoggerConnection logger, IEnumerable<int> channels)
    {
        this.logger = logger;
        foreach (int channel in channels)
        {
            before[channel] = logger.GetCalibration(channel);
        }
    }

    public CalibrationAnswer Before(int channel) => before[channel];

    /// <exception cref="UserErrorException">Not all came through; the sentence says what the logger holds now.</exception>
    public void Store(IReadOnlyList<SendCalibration> fresh)
    {
        try
        {
            foreach (SendCalibration one in fresh)
            {
                touched.Add(one.Channel);
                Demand(one, logger.SendCalibration(one));
            }

            foreach (SendCalibration one in fresh)
            {
                Demand(one, logger.GetCalibration(one.Channel));
            }
        }
        catch (UserErrorException error)
        {
            throw new UserErrorException($"{error.Message} {PutBack(fresh)}");
        }
    }

    private string PutBack(IReadOnlyList<SendCalibration> fresh)
    {
        List<int> back = [];
        try
        {
            foreach (int channel in touched)
            {
                var old = new SendCalibration();
                old.CopyFrom(before[channel]);
                Demand(old, logger.SendCalibration(old));
                back.Add(channel);
            }

            return "Nothing new is stored: every channel holds what it held before.";
        }
        catch (UserErrorException)
        {
            string unsure = Names(touched.Except(back));
            string sure = Names(fresh.Select(one => (int)one.Channel).Except(touched).Concat(back));
            return $"The logger could not be put back: {unsure} may hold the new calibration or the old one{(sure.Length == 0 ? "" : $", {sure} the old one")}; "
                + "look with `loggerbox calibrate --show` before the next test, and calibrate again.";
        }
    }

    private void Demand(CalibrationMessage wanted, CalibrationAnswer held)
    {
        bool same = wanted.Kind == held.Kind && wanted.ZeroCounts == held.ZeroCounts && wanted.SpanCounts == held.SpanCounts && wanted.SpanPascal == held.SpanPascal
            && wanted.AccuracyPascal == held.AccuracyPascal && wanted.UtcSeconds == held.UtcSeconds && wanted.Transducer == held.Transducer && wanted.Reference == held.Reference;
        if (!same)
        {
            throw new UserErrorException($"The logger on {logger.Port} holds another calibration of {Names([wanted.Channel])} than it was sent.");
        }
    }

    private static string Names(IEnumerable<int> channels) => string.Join(" and ", channels.Order().Select(ChannelName));

    private static string ChannelName(int channel) => channel switch
    {
        Protocol.Records.Channel.Main => "main",
        Protocol.Records.Channel.Clutch => "clutch",
        _ => "converter",
    };
}
